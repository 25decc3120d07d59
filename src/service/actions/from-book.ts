import type { Range } from '../../language/index.js';
import type { Record } from '../../vocabulary/index.js';
import { bookLinesOf } from '../book/entries.js';
import { lastWords, threeFigures } from '../book/words.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';

/** Writes the three figures that the shop really had in the place of a written time. */
export function writeFromBook(uri: string, range: Range, context: FeatureContext): Action[] {
  const { book, resolved } = context.weighing(uri);
  if (book.size === 0) return [];
  const found: Action[] = [];
  const visit = (record: Record): void => {
    for (const { entry, hours } of bookLinesOf(record, book)) {
      const at = hours === undefined ? undefined : context.place(hours.at);
      const text = threeFigures(entry);
      if (at === undefined || at.uri !== uri || at.range.start > range.end || at.range.end < range.start) continue;
      if (context.tree(uri)?.text.slice(at.range.start, at.range.end) === text) continue;
      found.push({ title: `Write ${text}, ${lastWords(entry)}`, kind: 'refactor', code: undefined, edits: new Map([[uri, [{ range: at.range, text }]]]), creates: undefined });
    }
    record.children.forEach(visit);
  };
  for (const record of resolved.records) if (record.block.uri === uri) visit(record);
  return found;
}
