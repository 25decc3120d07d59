/**
 * The earliest end of pieces that wait for each other with so many technicians, by trying every order in which work can
 * be taken up. Whole numbers only: hours in six-thousandths. Nothing here comes from the product.
 */
import { ceiling, monthsOn, startOf } from './after.js';
import { isOpen, daysLater, nextDay, workingDayAfter } from './day-walk.js';
import type { Piece } from './pieces.js';
import { amount } from './prices.js';
import { fromDigits, per, times, whole, type Rational } from './rational.js';
import type { Json } from './reader.js';
import type { Oracle } from './totals.js';

/** Minutes of three decimals and hours of two are whole in these. */
const STEPS = 6000n;

export interface BayTime {
  readonly shop: Json;
  /** In steps. */
  readonly day: number;
  readonly technicians: number;
  readonly start: string | undefined;
}

/** The shop's time for an estimate: eight hours and one technician where nothing is said, the estimate before the shop. */
export function bayTime(own: Oracle): BayTime {
  const { all, shop } = own.prices;
  const workday = amount(shop['workday']);
  const header = all.find(({ kind }) => kind === 'estimate');
  const technicians = amount(header?.['technicians']) ?? amount(shop['technicians']);
  return {
    shop, start: startOf(own), technicians: Number(technicians?.likely ?? 1),
    day: workday === undefined ? steps(whole(8n)) : steps(per(fromDigits(workday.likely), workday.unit === 'min' ? 60n : 1n)),
  };
}

export function steps(hours: Rational): number {
  const { n, d } = times(hours, whole(STEPS));
  if (n % d !== 0n) throw new Error('a length finer than is counted here');
  return Number(n / d);
}

/** What was found: the earliest end, or what no plan can beat where there are too many orders to try. */
export type Earliest = { readonly kind: 'found'; readonly end: number; readonly work: number } | { readonly kind: 'at least'; readonly end: number };

/** So many steps of the search are taken at most. */
const MOST = 60_000;

export function earliestEnd(pieces: readonly Piece[], time: BayTime): Earliest {
  const order = inOrder(pieces);
  const lengths = new Map(pieces.map((piece) => [piece, piece.unit === 'h' ? steps(piece.length) : 0]));
  const ready = (piece: Piece, ends: ReadonlyMap<Piece, number>) => Math.max(0, ...[...piece.after].map((one) => ends.get(one) as number));
  const endOf = (piece: Piece, start: number) => (piece.work ? start + (lengths.get(piece) as number) : waitEnd(piece, start, time));
  const taken = order.filter((piece) => piece.work && (lengths.get(piece) as number) > 0);

  /** Ends of everything where `free` hold the technicians and the work that was placed keeps its place. */
  const settle = (placed: ReadonlyMap<Piece, number>, from: number) => {
    const ends = new Map<Piece, number>();
    for (const piece of order) {
      const own = placed.get(piece);
      // What is not placed starts no sooner than the next technician is free.
      const least = own === undefined && taken.includes(piece) ? Math.max(from, ready(piece, ends)) : ready(piece, ends);
      ends.set(piece, own ?? endOf(piece, least));
    }
    return ends;
  };
  const last = (ends: ReadonlyMap<Piece, number>) => Math.max(0, ...ends.values());

  const bound = Math.max(last(settle(new Map(), 0)), 0);
  let best = Infinity;
  let left = MOST;
  const search = (placed: ReadonlyMap<Piece, number>, free: readonly number[]) => {
    if (best === bound || left-- <= 0) return;
    const soonest = Math.min(...free);
    const ends = settle(placed, soonest);
    const waiting = taken.filter((piece) => !placed.has(piece));
    const work = waiting.reduce((sum, piece) => sum + (lengths.get(piece) as number), free.reduce((a, b) => a + b, 0)) / free.length;
    if (Math.max(last(ends), work) >= best) return;
    if (waiting.length === 0) {
      best = last(ends);
      return;
    }
    const open = waiting.filter((piece) => waiting.every((other) => !before(piece, other)));
    const starts = open.map((piece) => ({ piece, start: Math.max(soonest, ready(piece, ends)) })).sort((a, b) => a.start - b.start);
    for (const { piece, start } of starts) {
      const end = endOf(piece, start);
      const at = free.indexOf(soonest);
      search(new Map([...placed, [piece, end]]), free.map((one, i) => (i === at ? end : one)));
    }
  };

  const reach = new Map<Piece, ReadonlySet<Piece>>();
  /** Whether `piece` waits for `other`, by whatever chain. */
  const before = (piece: Piece, other: Piece) => {
    let all = reach.get(piece);
    if (all === undefined) {
      const seen = new Set(piece.after);
      for (const one of seen) for (const next of one.after) seen.add(next);
      reach.set(piece, (all = seen));
    }
    return all.has(other);
  };

  search(new Map(), Array.from({ length: time.technicians }, () => 0));
  return left > 0 || best === bound ? { kind: 'found', end: best, work: taken.length } : { kind: 'at least', end: bound };
}

function inOrder(pieces: readonly Piece[]): Piece[] {
  const order = new Set<Piece>();
  const visit = (piece: Piece, path: readonly Piece[]) => {
    if (order.has(piece)) return;
    if (path.includes(piece)) throw new Error(`${piece.says} waits for itself`);
    for (const one of piece.after) visit(one, [...path, piece]);
    order.add(piece);
  };
  for (const piece of pieces) visit(piece, []);
  return [...order];
}

/** Working days pass in working time; weeks and months end on a day of the calendar, and what is closed then opens later. */
function waitEnd({ length, unit }: Piece, start: number, { shop, day, start: first }: BayTime): number {
  const count = Number(length.n) / Number(length.d);
  if (unit === 'd') return start + count * day;
  if (first === undefined) {
    const open = Array.from({ length: 7 }, (_, i) => daysLater('2026-11-30', i)).filter((iso) => isOpen({ ...shop, closed: weekdaysOf(shop) }, iso)).length;
    return start + Math.ceil(count * (unit === 'wk' ? open : (open * 52) / 12)) * day;
  }
  const from = workingDayAfter(shop, first, Math.floor(start / day));
  const until = unit === 'wk' ? daysLater(from, Math.ceil(count * 7)) : monthsOn(from, length, ceiling);
  let working = 0;
  for (let iso = first; iso < until; iso = nextDay(iso)) if (isOpen(shop, iso)) working++;
  return working * day;
}

function weekdaysOf(shop: Json): string[] {
  return ((shop['closed'] ?? []) as string[]).filter((one) => !/^\d/.test(one));
}
