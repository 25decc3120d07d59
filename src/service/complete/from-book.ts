import { kinds, readBlock, type Kind } from '../../vocabulary/index.js';
import type { Book, BookEntry } from '../../weigh/index.js';
import { entriesOf } from '../book/entries.js';
import { lastWords, threeFigures } from '../book/words.js';
import { recordIn } from '../hover/record-in.js';
import type { Here } from './here.js';
import type { Offer } from './offer.js';

/**
 * The hours of a job as the shop really had them, where a line says none yet. Behind with, those of that way in; where
 * the line says no way in, each way that it was done with, and the figures bring it along.
 */
export function bookFigures(here: Here, kind: Kind, said: ReadonlySet<string>, book: Book): Offer[] {
  if (book.size === 0 || here.statement === undefined || said.has('hours') || (kind !== kinds.labour && kind !== kinds.takes)) return [];
  const records = readBlock(here.block).records;
  const own = recordIn(here.statement, records);
  const above = here.above[here.above.length - 1];
  const job = kind === kinds.takes && above !== undefined ? recordIn(above, records) : own;
  const ways = (own?.values['with'] as readonly { readonly name: string }[] | undefined)?.map(({ name }) => name).sort();
  if (job === undefined) return [];
  const entries = entriesOf(job, book).filter((entry) => ways === undefined || entry.job.ways.join() === ways.join());
  return entries.map((entry) => offerOf(entry, ways === undefined));
}

function offerOf(entry: BookEntry, bringsWays: boolean): Offer {
  const figures = threeFigures(entry);
  const written = bringsWays && entry.job.ways.length > 0 ? `${figures}  with ${entry.job.ways.join(', ')}` : figures;
  return { label: written.replace('  ', ' '), kind: 'figure', detail: lastWords(entry), says: 'From the shop’s own book of times: one case in ten took less than the first figure, half of them less than the second, one in ten more than the third.', texts: [written, figures] };
}
