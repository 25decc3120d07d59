import { kinds, is, type Amount, type Name, type Record } from '../../vocabulary/index.js';
import { accessJob, labourJob, type Book, type BookEntry } from '../../weigh/index.js';

/** No job is known of. */
export const EMPTY: Book = new Map();

/** A written time of work, with what the shop's book says of work done that way. */
export interface BookLine {
  readonly entry: BookEntry;
  /** The time that is written; undefined where a line says none, such as a way in, which is opened and closed. */
  readonly hours: Amount | undefined;
  readonly ways: readonly string[];
}

/** What the book has for the times of a job's own line, and of the lines below it. */
export function bookLinesOf(record: Record, book: Book): BookLine[] {
  if (book.size === 0) return [];
  if (is(record, kinds.access)) return record.name === undefined ? [] : lineFor(book.get(accessJob({ name: record.name.name, title: '' }).key), undefined, []);
  if (!is(record, kinds.labour)) return [];
  const own = record.values.hours === undefined ? [] : timeLine(record, record, book);
  return [...own, ...record.children.flatMap((child) => (is(child, kinds.takes) ? timeLine(record, child, book) : []))];
}

/** What the book has for one time: of the line itself, or of a takes line below it. */
export function timeLine(job: Record, line: Record, book: Book): BookLine[] {
  const ways = ((line.values['with'] as readonly Name[] | undefined) ?? []).map(({ name }) => name);
  const key = keyOf(job, ways);
  return key === undefined ? [] : lineFor(book.get(key), line.values['hours'] as Amount | undefined, ways);
}

/** All that the book has of a job, whichever way in it was done with; the way done most often first. */
export function entriesOf(job: Record, book: Book): BookEntry[] {
  const key = keyOf(job, []);
  if (key === undefined) return [];
  return [...book.values()].filter((entry) => labourJob({ name: entry.job.name, title: entry.job.title }, []).key === key && entry.job.kind === 'labour').sort((a, b) => b.count - a.count);
}

function keyOf({ name, title }: Record, ways: readonly string[]): string | undefined {
  return name === undefined && title === undefined ? undefined : labourJob({ name: name?.name, title: title?.text ?? '' }, ways).key;
}

function lineFor(entry: BookEntry | undefined, hours: Amount | undefined, ways: readonly string[]): BookLine[] {
  return entry === undefined ? [] : [{ entry, hours, ways }];
}
