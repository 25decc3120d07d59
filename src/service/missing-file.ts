import { sentence } from '../language/index.js';
import { fileRules } from '../estimate/index.js';
import { clip } from '../vocabulary/index.js';
import type { FeatureContext } from './context.js';
import type { Diagnostic } from './types.js';

/** A file that a `use` line names, and that the host has no text of. */
export interface MissingFile {
  readonly path: string;
  readonly target: string;
  /** Why it can't be read, where it is there. */
  readonly why: string | undefined;
}

/** The file that a problem of a `use` line is about; undefined for all other problems. */
export function missingFile({ uri, range, code }: Diagnostic, { tree, host }: Pick<FeatureContext, 'tree' | 'host'>): MissingFile | undefined {
  if (code !== fileRules.useMissing.code) return undefined;
  const path = tree(uri)?.text.slice(range.start + 1, range.end - 1) ?? '';
  const target = host.resolvePath(uri, path);
  return target === undefined || host.read(target) !== 'missing' ? undefined : { path, target, why: host.whyMissing?.(target) };
}

/** The problem in the words of whoever could not read the file: one that is there is not called missing. */
export function withReason(diagnostic: Diagnostic, context: Pick<FeatureContext, 'tree' | 'host'>): Diagnostic {
  const { path, why } = missingFile(diagnostic, context) ?? {};
  if (path === undefined || why === undefined) return diagnostic;
  const [what, ...instead] = why.split(/(?<=\.) /);
  const message = { ...diagnostic.message, what: `“${clip(path)}” ${what}`, instead: instead.length === 0 ? 'See that it can be read, or write the path of another file.' : instead.join(' ') };
  return { ...diagnostic, message, text: sentence(message) };
}
