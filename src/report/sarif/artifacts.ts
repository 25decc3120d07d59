import type { SarifArtifact, SarifArtifactLocation, SarifRun } from './types.js';
import { messageText, uriReference } from './words.js';

/** A file as a log names it. */
export interface SarifFile {
  /** What tells it from other files; is not written. */
  readonly identity: string;
  /** With slashes: from the source root, or a bare name where it lies outside or came in on standard input. */
  readonly path: string;
  readonly from: 'source-root' | 'outside' | 'standard-input';
}

/** The root of the source tree, which the reader of the log sets: the name that readers of such logs know. */
const BASE = '%SRCROOT%';

const SAYS = {
  'source-root': undefined,
  outside: 'Outside of the source root; only its name is written down.',
  'standard-input': 'Standard input.',
} as const;

/** The files of a run (3.24), each once: those that were asked for first, then those that something was found in. */
export function artifactList(asked: readonly SarifFile[]): {
  readonly locationOf: (file: SarifFile) => SarifArtifactLocation;
  readonly all: () => readonly SarifArtifact[];
  readonly bases: SarifRun['originalUriBaseIds'];
} {
  const found = new Map<string, { readonly location: SarifArtifactLocation; readonly roles: readonly string[] }>();
  const add = (file: SarifFile, roles: readonly string[]): SarifArtifactLocation => {
    const known = found.get(file.identity);
    if (known !== undefined) return known.location;
    const location = { uri: uriReference(file.path), ...(file.from === 'source-root' ? { uriBaseId: BASE } : {}), index: found.size };
    const says = SAYS[file.from];
    const described = says === undefined ? location : { ...location, description: { text: messageText(says) } };
    found.set(file.identity, { location: described, roles: file.from === 'standard-input' ? [...roles, 'standardStream'] : roles });
    return described;
  };
  for (const file of asked) add(file, ['analysisTarget']);
  return {
    locationOf: (file) => {
      const { uri, uriBaseId, index } = add(file, []);
      return uriBaseId === undefined ? { uri, index } : { uri, uriBaseId, index };
    },
    all: () => [...found.values()].map(({ location, roles }) => (roles.length === 0 ? { location } : { location, roles })),
    // Without its address: that would tell where the files of this machine lie (3.14.14).
    bases: { [BASE]: { description: { text: 'The top folder of the repository, or the folder that the tool was started in.' } } },
  };
}
