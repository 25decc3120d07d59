import type { Chance, Estimate } from '../../estimate/index.js';
import { broughtBy, chancesOf, fixedLines, fixedOf, total, type Brought, type ChanceIn, type Line, type Money, type Totals, type Weighed } from '../../weigh/index.js';

/** What a chance adds to the total of an option if it happens, with the lines that it brings. */
export interface Added {
  readonly chance: Chance;
  /** The chances of which one must happen before it can; none where it hangs on nothing. */
  readonly after: readonly Chance[];
  readonly lines: readonly Line[];
  readonly before: Totals;
  readonly then: Totals;
}

/**
 * What may turn up while an option's work is open, each with what it adds by itself: the option is added up again with
 * the lines of the chance, so that fees, caps and taxes are those of the whole. The ways in stay those that are paid
 * for; work that needs more takes its own cheapest way beside them. What several chances bring is added to the first of them.
 * Comebacks are left out, and so is what brings nothing
 * that the option does not have anyway: a row of nothing says nothing to a customer.
 */
export function addedByChances(weighed: Weighed, estimate: Estimate, money: Money): readonly Added[] {
  const { option, planned: { chosen } } = weighed;
  const { counted } = chancesOf(weighed, estimate, money);
  const brought = new Map<ChanceIn, Brought>();
  const above = (one: ChanceIn): readonly ChanceIn[] => {
    // The first stands before it, whatever else it hangs on.
    const first = counted[one.under[0] ?? -1];
    return first === undefined ? [] : [...above(first), first];
  };
  const bring = (one: ChanceIn) => {
    const found = brought.get(one) ?? broughtBy(one.chance, weighed, estimate, money);
    brought.set(one, found);
    return found;
  };
  const totalWith = (happened: readonly ChanceIn[]) => {
    const all = withoutTwins(happened.map(bring));
    const jobs = [...chosen.jobs, ...all.flatMap((one) => one.jobs)].map(({ line }) => line);
    return total(option.title, jobs, [...chosen.opened, ...all.flatMap((one) => one.opened)], fixedOf([...fixedLines(option, estimate.shop, money), ...all.flatMap((one) => [...one.goods, ...one.fees])]), option.fees, estimate.shop, money);
  };
  return counted.filter(({ when }) => when === 'open').flatMap((one): Added[] => {
    const parents = above(one);
    const { opened, jobs, goods, fees } = withoutTwins([...parents, one].map(bring)).at(-1) as Brought;
    const lines = [...opened, ...jobs.map(({ line }) => line), ...goods, ...fees];
    return lines.length === 0 ? [] : [{ chance: one.chance, after: one.under.flatMap((place) => counted[place]?.chance ?? []), lines, before: totalWith(parents), then: totalWith([...parents, one]) }];
  });
}

/**
 * What the ones before bring too is paid once. Fees stay, each of its own chance. The drawn cases have their own of this
 * name for what takes time, which knows no prices.
 */
function withoutTwins(all: readonly Brought[]): readonly Brought[] {
  const seen = new Set<unknown>();
  // By place: removing a way in and refitting it are two lines of one record.
  const isNew = ({ at }: Line) => !seen.has(at) && seen.add(at) === seen;
  return all.map((one) => ({ ...one, jobs: one.jobs.filter(({ line }) => isNew(line)), goods: one.goods.filter(isNew), opened: one.opened.filter(isNew) }));
}
