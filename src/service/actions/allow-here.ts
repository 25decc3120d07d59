import { lineAround } from '../checks/lines.js';
import { ruleByCode } from '../registry.js';
import { blockAt } from '../at.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import type { Diagnostic } from '../types.js';

/**
 * A comment that allows a problem on its line. The reason is left to the writer: until it is there, a message asks
 * for it. Lines that can't be read, and comments that allow something already, are not allowed.
 */
export function allowHere({ uri, range, code, severity }: Diagnostic, { tree: treeOf }: FeatureContext): readonly Action[] {
  const tree = treeOf(uri);
  const rule = ruleByCode.get(code);
  if (tree === undefined || rule === undefined || (rule.family === 'shape' && severity === 'error') || code.startsWith('allow-')) return [];
  const line = lineAround(tree.text, range.start);
  const found = blockAt(tree, range.start);
  const commented = found?.block.comments.some(({ start }) => found.start + start >= line.start && found.start + start < line.end) === true;
  const indent = /^[ \t]*/.exec(tree.text.slice(line.start, line.end))?.[0] ?? '';
  const end = tree.text.slice(line.end, line.next) === '\r\n' ? '\r\n' : '\n';
  const edit = commented
    ? { range: { start: line.start, end: line.start }, text: `${indent}# allow ${code}:${end}` }
    : { range: { start: line.end, end: line.end }, text: `  # allow ${code}:` };
  return [{ title: `Allow ${code} here, with a reason to fill in`, kind: 'fix', code, edits: new Map([[uri, [edit]]]), creates: undefined }];
}
