import { is, kinds, type Record } from '../../vocabulary/index.js';
import type { Book } from '../../weigh/index.js';
import { bookLinesOf, timeLine } from '../book/entries.js';
import { bookSentence } from '../book/words.js';

/** What work really took whenever the shop did it, for its line or for one of its times. */
export function fromBook(record: Record | undefined, above: Record | undefined, book: Book): string[] {
  if (record === undefined || book.size === 0) return [];
  const lines = is(record, kinds.takes) ? (above === undefined ? [] : timeLine(above, record, book)) : bookLinesOf(record, book);
  return lines.map(({ entry }) => bookSentence(entry));
}
