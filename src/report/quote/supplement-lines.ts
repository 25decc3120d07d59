import type { Decimal } from '../../vocabulary/index.js';
import { zero } from '../../vocabulary/index.js';
import type { Money, Weighed } from '../../weigh/index.js';
import type { LineWriter } from './lines.js';
import type { Digits, QuoteLine } from './types.js';

/** A line that is new, has fallen away, or comes to another amount than before: sold amounts only. */
export interface SupplementLine {
  readonly kind: 'came' | 'went' | 'moved';
  /** As it is now, or as it was where it has fallen away. */
  readonly line: QuoteLine;
  readonly before: Digits | undefined;
  readonly now: Digits | undefined;
  /** How much more it is now; negative where it is less. */
  readonly more: Digits;
}

/** A tax before and now. */
export interface SupplementTax {
  readonly title: string;
  readonly before: Digits;
  readonly now: Digits;
  readonly more: Digits;
}

/** An option with a writer for its lines. */
export interface Priced {
  readonly totals: Weighed['totals'];
  readonly write: LineWriter;
}

interface Sold {
  readonly line: QuoteLine;
  readonly amount: Decimal;
}

/**
 * What changed in an option, line by line. A line is known by what it is sold as and by its name, or its title where it
 * has none; of several that are alike, those of the same amount belong together. Lines that stayed are not told.
 */
export function supplementLines(before: Priced, now: Priced, { currency: { digits } }: Money): readonly SupplementLine[] {
  const then = byKey(before);
  const lines: SupplementLine[] = [];
  const add = (old: Sold | undefined, fresh: Sold | undefined): void => {
    const more = (fresh?.amount ?? zero).minus(old?.amount ?? zero);
    const line = (fresh ?? old)?.line;
    if (line === undefined || (old !== undefined && fresh !== undefined && more.isZero())) return;
    lines.push({ kind: old === undefined ? 'came' : fresh === undefined ? 'went' : 'moved', line: { ...line, because: [] }, before: old?.line.amount, now: fresh?.line.amount, more: more.toFixed(digits) });
  };
  for (const [key, fresh] of byKey(now)) {
    const old = [...(then.get(key) ?? [])];
    const unmatched = fresh.filter((one) => {
      const same = old.findIndex(({ amount }) => amount.eq(one.amount));
      if (same >= 0) old.splice(same, 1);
      return same < 0;
    });
    const pairs = Math.max(unmatched.length, old.length);
    for (let i = 0; i < pairs; i++) add(old[i], unmatched[i]);
    then.delete(key);
  }
  for (const gone of then.values()) for (const one of gone) add(one, undefined);
  return lines;
}

export function supplementTaxes(before: Priced, now: Priced, { currency: { digits } }: Money): readonly SupplementTax[] {
  const amounts = ({ totals }: Priced) => new Map(totals.taxes.map(({ tax, amount }) => [tax.name, { title: tax.title, amount: amount.likely }]));
  const [then, today] = [amounts(before), amounts(now)];
  return [...new Set([...today.keys(), ...then.keys()])].flatMap((name) => {
    const [old, fresh] = [then.get(name)?.amount ?? zero, today.get(name)?.amount ?? zero];
    if (old.eq(fresh)) return [];
    return [{ title: (today.get(name) ?? then.get(name))?.title ?? name, before: old.toFixed(digits), now: fresh.toFixed(digits), more: fresh.minus(old).toFixed(digits) }];
  });
}

/** Lines that are alike, the least amount first, so that their order in the file says nothing. */
function byKey({ totals, write }: Priced): Map<string, Sold[]> {
  const found = new Map<string, Sold[]>();
  for (const one of totals.lines) {
    const line = write(one);
    const key = JSON.stringify([one.kind, one.share, line.stretch ?? '', one.name ?? '', one.name === undefined ? line.title : '']);
    const alike = found.get(key);
    const sold = { line, amount: one.amount.likely };
    if (alike === undefined) found.set(key, [sold]);
    else alike.push(sold);
  }
  for (const alike of found.values()) alike.sort((a, b) => a.amount.comparedTo(b.amount));
  return found;
}
