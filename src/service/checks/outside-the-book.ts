import type { Rule } from '../../language/index.js';
import type { Amount, Record } from '../../vocabulary/index.js';
import { hoursIn } from '../../estimate/index.js';
import type { BookEntry } from '../../weigh/index.js';
import { hoursShown } from '../../report/index.js';
import { bookLinesOf } from '../book/entries.js';
import { threeFigures } from '../book/words.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

export const outsideTheBook: Rule<{ readonly written: string; readonly count: number; readonly edge: string; readonly side: 'below' | 'above'; readonly figures: string; readonly of: 'work' | 'way in' }> = {
  code: 'outside-the-book', family: 'job', severity: 'advice', title: 'A time that the shop has never had',
  message: ({ written, count, edge, side, figures, of }) => ({
    what: `${of === 'work' ? written : `${written} to open and close it`} is ${side === 'below' ? 'less than the quickest' : 'more than the slowest'} of your last ${count}, ${edge}.`,
    why: side === 'below' ? 'The hours that it then really takes are not in the price.' : 'The price may scare off a customer who need not pay it.',
    instead: `Write what your own book has, ${figures}${of === 'work' ? '' : ' for remove and refit together'}, or allow this and say what is different here.`,
  }),
  fix: ({ figures, of }, at) => (of === 'work' ? { title: `Write ${figures}, as in your book of times`, at, text: figures } : undefined),
  besides: 'It is told in the editor, where the setting steelyard.bookOfTimes names closed estimates; the terminal’s check reads no book of times, and steelyard history shows it there.',
  example: example({ lines: 'labour front-seal "Front seal: replace" «0.5 h»\n  because seen\n', one: '  do front-seal\n' }),
};

/** Of estimates that are still to be done; what was done is the book itself. */
export const bookCheck = wholeCheck(outsideTheBook, function* find({ resolved: { records, estimate }, book, isOwn }) {
  if (estimate.closed !== undefined || book.size === 0) return;
  for (const record of withBelow(records)) {
    if (!isOwn({ record })) continue;
    for (const { entry, hours: own } of bookLinesOf(record, book)) {
      const hours = own === undefined ? both(record) : [own];
      const written = hours.reduce((total, one) => total + hoursIn(one).toNumber(), 0);
      const side = entry.few ? undefined : sideOf(written, entry);
      if (hours[0] === undefined || side === undefined) continue;
      const edge = `${hoursShown(side === 'below' ? entry.hours.least : entry.hours.most)} h`;
      yield found(outsideTheBook, hours[0].at, { written: `${hoursShown(written)} h`, count: entry.count, edge, side, figures: threeFigures(entry), of: own === undefined ? 'way in' : 'work' });
    }
  }
});

function sideOf(written: number, { hours: { least, most } }: BookEntry): 'below' | 'above' | undefined {
  return written < least ? 'below' : written > most ? 'above' : undefined;
}

/** A way in is opened and closed: the book has both together. */
function both({ values }: Record): Amount[] {
  return [values['remove'], values['refit']].filter((one) => one !== undefined) as Amount[];
}

function* withBelow(records: readonly Record[]): Generator<Record> {
  for (const record of records) {
    yield record;
    yield* withBelow(record.children);
  }
}
