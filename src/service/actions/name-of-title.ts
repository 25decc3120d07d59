import { NAMED_KINDS } from '../../estimate/index.js';
import { valueRules } from '../../vocabulary/index.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import type { Diagnostic } from '../types.js';

/** Where a title stands for a name: the names of the lines that have this title. */
export function nameOfTitle({ code, uri, range }: Diagnostic, context: FeatureContext): readonly Action[] {
  const written = context.tree(uri)?.text.slice(range.start, range.end);
  if (code !== valueRules.expected.code || written?.startsWith('"') !== true) return [];
  const { scope } = context.weighing(uri).resolved;
  const names = NAMED_KINDS.flatMap((kind) => scope.named(kind)).filter(({ title }) => title !== undefined && `"${title.text}"` === written).flatMap(({ name }) => name?.name ?? []);
  return [...new Set(names)].map((name) => ({ title: `Write ${name}`, kind: 'fix', code, edits: new Map([[uri, [{ range, text: name }]]]), creates: undefined }));
}
