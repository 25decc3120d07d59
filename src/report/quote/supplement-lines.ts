import type { Decimal } from '../../vocabulary/index.js';
import { zero } from '../../vocabulary/index.js';
import type { SameLine } from '../../weigh/changes/index.js';
import type { Line, Money, Weighed } from '../../weigh/index.js';
import type { LineWriter } from './lines.js';
import type { Digits, QuoteLine } from './types.js';

/** A line that is new, has fallen away, comes to another amount than before, or is only called otherwise: sold amounts only. */
export interface SupplementLine {
  readonly kind: 'came' | 'went' | 'moved' | 'renamed';
  /** As it is now, or as it was where it has fallen away. */
  readonly line: QuoteLine;
  /** What it was called, where that is not what it is called now. */
  readonly was: string | undefined;
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
  readonly of: Line;
  readonly line: QuoteLine;
  readonly amount: Decimal;
}

/** A line before and now; one of them is missing where it came or went. */
interface Pair {
  readonly old: Sold | undefined;
  readonly fresh: Sold | undefined;
  /** Whether its name or title says that it is the same; otherwise only what else it says does. */
  readonly by: 'name' | 'likeness';
}

/**
 * What changed in an option, line by line. A line is known by what it is sold as and by its name, or its title where it
 * has none; of several that are alike, those of the same amount belong together. What is left over on both sides may be
 * one line under another name. Lines that stayed are not told; but where only their likeness says that two lines are
 * one, and they are called otherwise, the customer is told so.
 */
export function supplementLines(before: Priced, now: Priced, same: SameLine, { currency: { digits } }: Money): readonly SupplementLine[] {
  return renamed(byName(before, now), same).flatMap(({ old, fresh, by }): SupplementLine[] => {
    const line = (fresh ?? old)?.line;
    const more = (fresh?.amount ?? zero).minus(old?.amount ?? zero);
    const was = old === undefined || old.line.title === line?.title ? undefined : old.line.title;
    const stayed = old !== undefined && fresh !== undefined && more.isZero();
    if (line === undefined || (stayed && (by === 'name' || was === undefined))) return [];
    const kind = old === undefined ? 'came' : fresh === undefined ? 'went' : stayed ? 'renamed' : 'moved';
    return [{ kind, line: { ...line, because: [] }, was, before: old?.line.amount, now: fresh?.line.amount, more: more.toFixed(digits) }];
  });
}

function byName(before: Priced, now: Priced): readonly Pair[] {
  const then = byKey(before);
  const pairs: Pair[] = [];
  for (const [key, fresh] of byKey(now)) {
    const old = [...(then.get(key) ?? [])];
    const unmatched = fresh.filter((one) => {
      const same = old.findIndex(({ amount }) => amount.eq(one.amount));
      if (same < 0) return true;
      pairs.push({ old: old[same], fresh: one, by: 'name' });
      old.splice(same, 1);
      return false;
    });
    for (let i = 0; i < Math.max(unmatched.length, old.length); i++) pairs.push({ old: old[i], fresh: unmatched[i], by: 'name' });
    then.delete(key);
  }
  return [...pairs, ...[...then.values()].flat().map((one): Pair => ({ old: one, fresh: undefined, by: 'name' }))];
}

/** Puts what went and what came together where both are one line of the estimate, sold as the same. */
function renamed(pairs: readonly Pair[], same: SameLine): readonly Pair[] {
  const went = new Map<object, Sold[]>();
  for (const { old, fresh } of pairs) {
    const thing = old === undefined || fresh !== undefined ? undefined : same(old.of.record);
    if (old === undefined || thing === undefined) continue;
    const alike = went.get(thing);
    if (alike === undefined) went.set(thing, [old]);
    else alike.push(old);
  }
  const found = new Set<Sold>();
  const joined = pairs.map((pair): Pair => {
    const { old, fresh } = pair;
    const thing = fresh === undefined || old !== undefined ? undefined : same(fresh.of.record);
    if (fresh === undefined || thing === undefined) return pair;
    const former = went.get(thing)?.find((one) => !found.has(one) && soldAs(one) === soldAs(fresh));
    if (former === undefined) return pair;
    found.add(former);
    return { old: former, fresh, by: 'likeness' };
  });
  return joined.filter(({ old, by }) => old === undefined || by === 'likeness' || !found.has(old));
}

function soldAs({ of: { kind, share }, line: { stretch } }: Sold): string {
  return JSON.stringify([kind, share, stretch ?? '']);
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
    const sold: Sold = { of: one, line, amount: one.amount.likely };
    const key = JSON.stringify([soldAs(sold), one.name ?? '', one.name === undefined ? line.title : '']);
    const alike = found.get(key);
    if (alike === undefined) found.set(key, [sold]);
    else alike.push(sold);
  }
  for (const alike of found.values()) alike.sort((a, b) => a.amount.comparedTo(b.amount));
  return found;
}
