import type { Access, Chance, Estimate } from '../../estimate/index.js';
import { chancesOf, feeLine, fixedLines, fixedOf, linesOfWays, lineWith, planWork, total, withoutCores, type ChanceIn, type Line, type Money, type Totals, type Weighed } from '../../weigh/index.js';

/** What a chance adds to the total of an option if it happens, with the lines that it brings. */
export interface Added {
  readonly chance: Chance;
  /** The chance without which it can't happen. */
  readonly after: Chance | undefined;
  readonly lines: readonly Line[];
  readonly before: Totals;
  readonly then: Totals;
}

/**
 * What may turn up while an option's work is open, each with what it adds by itself: the option is added up again with
 * the lines of the chance, so that fees, caps and taxes are those of the whole. The ways in stay those that are paid
 * for; work that needs more takes its own cheapest way beside them. Comebacks are left out.
 */
export function addedByChances(weighed: Weighed, estimate: Estimate, money: Money): readonly Added[] {
  const { option, planned: { chosen } } = weighed;
  const { counted } = chancesOf(option, chosen, estimate);
  const brought = new Map<ChanceIn, Brought>();
  const above = (one: ChanceIn): readonly ChanceIn[] => {
    const parent = one.parent === undefined ? undefined : counted[one.parent];
    return parent === undefined ? [] : [...above(parent), parent];
  };
  const bring = (one: ChanceIn) => {
    const found = brought.get(one) ?? broughtBy(one.chance, weighed, estimate, money);
    brought.set(one, found);
    return found;
  };
  const totalWith = (happened: readonly ChanceIn[]) => {
    const all = withoutTwins(happened.map(bring));
    const jobs = [...chosen.jobs.map(({ line }) => line), ...all.flatMap((one) => one.jobs)];
    const ways = withoutCores(linesOfWays([...new Set(all.flatMap((one) => one.ways))], estimate.shop, money));
    return total(option.title, jobs, [...chosen.opened, ...ways], fixedOf([...fixedLines(option, estimate.shop, money), ...all.flatMap((one) => [...one.goods, ...one.fees])]), option.fees, estimate.shop, money);
  };
  return counted.filter(({ when }) => when === 'open').map((one): Added => {
    const parents = above(one);
    const { ways, jobs, goods, fees } = withoutTwins([...parents, one].map(bring)).at(-1) as Brought;
    return {
      chance: one.chance,
      after: parents.at(-1)?.chance,
      lines: [...withoutCores(linesOfWays(ways, estimate.shop, money)), ...jobs, ...goods, ...fees],
      before: totalWith(parents),
      then: totalWith([...parents, one]),
    };
  });
}

interface Brought {
  readonly ways: readonly Access[];
  readonly jobs: readonly Line[];
  readonly goods: readonly Line[];
  readonly fees: readonly Line[];
}

/**
 * What the ones before bring too is paid once. Fees stay, each of its own chance; ways become a set where they are
 * priced. The drawn cases have their own of this name for what takes time, which knows no prices.
 */
function withoutTwins(all: readonly Brought[]): readonly Brought[] {
  const seen = new Set<unknown>();
  const isNew = ({ record }: Line) => !seen.has(record) && seen.add(record) === seen;
  return all.map(({ ways, jobs, goods, fees }) => ({ ways, jobs: jobs.filter(isNew), goods: goods.filter(isNew), fees }));
}

/** What a chance adds to an option that has it not yet: what is done or fitted anyway is paid already. */
function broughtBy(chance: Chance, { planned: { chosen } }: Weighed, { shop, access }: Estimate, money: Money): Brought {
  const had = new Set<unknown>(chosen.totals.lines.map(({ record }) => record));
  const open = new Set(chosen.paid.flatMap((way) => [way, ...way.includes]));
  const beyond = chance.labour.filter((job) => job.modes.length > 0 && lineWith(job, open, money) === undefined);
  const extra = beyond.length === 0 ? [] : planWork({ title: chance.title, labour: beyond, parts: [], sublets: [], fees: [], way: undefined, access }, shop, money).chosen.paid;
  const ways = extra.filter((way) => !open.has(way));
  const all = new Set([...open, ...ways.flatMap((way) => [way, ...way.includes])]);
  const jobs = chance.labour.flatMap((job) => lineWith(job, all, money)?.line ?? []).filter(({ record }) => !had.has(record));
  const goods = withoutCores(fixedLines(chance, shop, money)).filter(({ record }) => !had.has(record));
  const sumOf = (kind: Line['kind']) => fixedOf([...goods, ...jobs].filter((line) => line.kind === kind));
  const of = { labour: total(chance.title, jobs, [], fixedOf(goods.filter(({ kind }) => kind === 'labour')), [], shop, money).labour, parts: sumOf('part').parts, sublets: sumOf('sublet').sublets };
  const fees = chance.fees.flatMap((fee) => feeLine(fee, of, money) ?? []);
  return { ways, jobs, goods, fees };
}
