import type { Comparison, Weighed } from '../weigh.js';
import type { SideName } from './again.js';
import type { WeighedPair } from './effects.js';
import type { OptionState, Pick } from './types.js';

/** One option as one version weighs it. */
export function stateOf(weighed: Weighed | undefined): OptionState | undefined {
  if (weighed === undefined) return undefined;
  const { option, totals, inAll, ready, planned, complete } = weighed;
  return {
    name: option.name, title: option.title, at: option.at, total: totals.total.likely, inAll: inAll.likely, hours: totals.hours.likely,
    days: ready.days.likely, ready: ready.date, ways: planned.chosen.paid.map((way) => way.name), complete, ruledOut: option.ruledOutBy.map((one) => one.title),
  };
}

/** The option that costs least in all of those that compete, and the next. */
export function pickOf({ ranking }: Comparison, pairs: readonly WeighedPair[], side: SideName): Pick | undefined {
  const [first, second] = ranking;
  if (first === undefined) return undefined;
  const at = (weighed: Weighed) => pairs.findIndex((pair) => pair[side] === weighed);
  return {
    option: at(first), inAll: first.inAll.likely,
    less: second?.inAll.likely.minus(first.inAll.likely),
    next: second === undefined ? undefined : at(second),
  };
}

/** The ways in that an option pays for, as people say them. */
export function wayNames(weighed: Weighed | undefined): string {
  const paid = weighed?.planned.chosen.paid ?? [];
  return paid.length === 0 ? 'in the car' : paid.map((way) => way.name).join(' + ');
}
