import { changesHtml, changesJson, changesText } from '../report/changes/index.js';
import { jsonText } from '../report/index.js';
import { changesBetween } from '../service/index.js';
import { sayBesideInput } from './beside-input.js';
import { sarifOf } from './changes-sarif.js';
import { formFor, send } from './export-to.js';
import { InputError, STDIN } from './files.js';
import { sideNamed, sideOnDisk, sideSince, type OpenSide } from './git/sides.js';
import { placesOf } from './positions.js';
import { sayWhatIsWrong } from './quote-wrong.js';
import { emphasisOf, type Terminal } from './terminal.js';

export interface ChangesOptions {
  readonly as: string | undefined;
  readonly output: string | undefined;
  /** The revision that one file is compared with. */
  readonly since: string | undefined;
  readonly version: string;
}

const ENDS = { text: ['txt'], html: ['html', 'htm'], json: ['json'], sarif: ['sarif'] } as const;

/** `steelyard changes`: what changed between two versions, and what that does. True where all of both could be read. */
export function changes(names: readonly string[], { as, output, since, version }: ChangesOptions, terminal: Terminal): boolean {
  const form = formFor(as, output, ENDS) ?? 'text';
  const sides = sidesFor(names, since, terminal);
  const [before, after] = sides;
  const found = changesBetween(before.side, after.side);
  switch (form) {
    case 'text': send(changesText(found, emphasisOf(output === undefined ? terminal : { ...terminal, styled: false })), output, terminal); break;
    case 'html': send(changesHtml(found), output, terminal); break;
    case 'json': send(jsonText(changesJson(found, { before: placesIn(before), after: placesIn(after) })), output, terminal); break;
    case 'sarif': send(jsonText(sarifOf(found, sides, version, terminal.cwd)), output, terminal); break;
  }
  sides.filter((_, i) => names[i] === STDIN).forEach(({ side, files }) => sayBesideInput(side.uri, side.service, files, terminal));
  return sides.map(({ side, files, seeAll }) => sayWhatIsWrong(side.name, side.uri, side.service, files, terminal, seeAll)).every((whole) => whole);
}

function sidesFor(names: readonly string[], since: string | undefined, terminal: Terminal): readonly [OpenSide, OpenSide] {
  const [first = '', second] = names;
  if (second === undefined) {
    if (first === STDIN) throw new InputError('changes needs a version to compare standard input with, as in: steelyard changes HEAD:job.yard -');
    const after = sideOnDisk(first, terminal);
    return [sideSince(first, since ?? 'HEAD', terminal), after];
  }
  if (since !== undefined) throw new InputError('--since goes with one file; with two versions, write OLD and NEW alone.');
  if (first === STDIN && second === STDIN) throw new InputError('Only one of the two versions can be standard input.');
  return [sideNamed(first, terminal), sideNamed(second, terminal)];
}

function placesIn({ side, files }: OpenSide): ReturnType<typeof placesOf> {
  return placesOf(side.service, files);
}
