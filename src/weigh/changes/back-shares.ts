import type { Span } from '../../language/index.js';
import { zero, type Decimal } from '../../vocabulary/index.js';
import { partsIn } from '../cores.js';
import type { SideName } from './again.js';
import type { Share, Workings } from './share.js';
import { split } from './split.js';
import type { Thing } from './things.js';

/** What comes back for a part, or for a piece that is taken off. */
interface Back {
  readonly refund: Decimal;
  readonly salvage: Decimal;
  readonly late: boolean;
}

/** What comes back makes an option cheaper in all: refunds by their part, whether they are in time, and their tax. */
export function* backShares(workings: Workings): Generator<readonly Share[]> {
  const { sides, causes, moved } = workings;
  const { before, after } = sides.option;
  const backs = { before: backsOf('before', workings), after: backsOf('after', workings) };
  for (const thing of sides.thingsIn(backs)) {
    const found = { before: backs.before.get(sides.onSide(thing, 'before')), after: backs.after.get(sides.onSide(thing, 'after')) };
    const only = found.before === undefined ? 'after' : found.after === undefined ? 'before' : undefined;
    const own = only === undefined ? moved.own(thing) : causes.of(sides.onSide(thing, only), only, sides.option);
    const value = (of: Back | undefined, { late }: Back) => (of === undefined || late ? zero : of.refund.neg());
    // A part of one version only has no other way of being late.
    const lateOf = (side: SideName) => (found[side] ?? found.before ?? found.after) as Back;
    const parts = split(2, ([of, late]) => value(found[of as SideName], lateOf(late as SideName))) as readonly [Decimal, Decimal];
    yield [[own, parts[0]], [{ sort: 'refund', title: 'Core back in time or not', option: undefined }, parts[1]]];
    yield [[own, (found.before?.salvage ?? zero).minus(found.after?.salvage ?? zero)]];
  }
  yield [[{ sort: 'tax-back', title: 'Tax back with the cores', option: undefined }, before.returns.taxBack.likely.minus(after.returns.taxBack.likely)]];
}

function backsOf(side: SideName, { sides, again }: Workings): ReadonlyMap<Thing, Back> {
  const { option, planned, returns, totals } = sides.option[side];
  const { things } = sides.versions[side];
  const found = new Map<Thing, Back>();
  const worth = (sources: readonly { readonly at: Span }[]) => returns.salvage.from.reduce((all, { at, likely }) => (sources.some((one) => one.at === at) ? all.plus(likely) : all), zero);
  for (const part of partsIn(option, planned.chosen)) {
    const thing = things.of(part.record);
    if (thing === undefined || part.core === undefined) continue;
    const cores = returns.cores.filter((core) => core.part === part);
    const refund = again.refund(part, totals.lines, side).times(cores.length);
    found.set(thing, { refund, salvage: worth(part.core.keeps), late: cores.some(({ late }) => late) });
  }
  for (const piece of option.harvests) {
    const thing = things.of(piece.record);
    if (thing !== undefined) found.set(thing, { refund: zero, salvage: worth([piece]), late: false });
  }
  return found;
}
