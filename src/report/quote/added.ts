import type { Access, Chance, Estimate } from '../../estimate/index.js';
import { chancesOf, feeLine, fixedLines, fixedOf, linesOfWays, lineWith, planWork, total, type ChanceIn, type Line, type Money, type Totals, type Weighed } from '../../weigh/index.js';

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
    const all = happened.map(bring);
    const jobs = [...chosen.jobs.map(({ line }) => line), ...all.flatMap((one) => one.jobs)];
    const ways = linesOfWays([...new Set(all.flatMap((one) => one.ways))], estimate.shop, money);
    return total(option.title, jobs, [...chosen.opened, ...ways], fixedOf([...fixedLines(option, estimate.shop, money), ...all.flatMap((one) => one.goods)]), option.fees, estimate.shop, money);
  };
  return counted.filter(({ when }) => when === 'open').map((one): Added => {
    const { ways, jobs, goods } = bring(one);
    const parents = above(one);
    return {
      chance: one.chance,
      after: parents.at(-1)?.chance,
      lines: [...linesOfWays(ways, estimate.shop, money), ...jobs, ...goods],
      before: totalWith(parents),
      then: totalWith([...parents, one]),
    };
  });
}

interface Brought {
  readonly ways: readonly Access[];
  readonly jobs: readonly Line[];
  readonly goods: readonly Line[];
}

function broughtBy(chance: Chance, { planned: { chosen } }: Weighed, { shop, access }: Estimate, money: Money): Brought {
  const open = new Set(chosen.paid.flatMap((way) => [way, ...way.includes]));
  const beyond = chance.labour.filter((job) => job.modes.length > 0 && lineWith(job, open, money) === undefined);
  const extra = beyond.length === 0 ? [] : planWork({ title: chance.title, labour: beyond, parts: [], sublets: [], fees: [], way: undefined, access }, shop, money).chosen.paid;
  const ways = extra.filter((way) => !open.has(way));
  const all = new Set([...open, ...ways.flatMap((way) => [way, ...way.includes])]);
  const jobs = chance.labour.flatMap((job) => lineWith(job, all, money)?.line ?? []);
  // A core that it would bring goes back in full, and so adds nothing in the end.
  const goods = fixedLines(chance, shop, money).filter(({ kind }) => kind !== 'core' && kind !== 'labour');
  const sumOf = (kind: Line['kind']) => fixedOf([...goods, ...jobs].filter((line) => line.kind === kind));
  const of = { labour: total(chance.title, jobs, [], fixedOf([]), [], shop, money).labour, parts: sumOf('part').parts, sublets: sumOf('sublet').sublets };
  const fees = chance.fees.flatMap((fee) => feeLine(fee, of, money) ?? []);
  return { ways, jobs, goods: [...goods, ...fees] };
}
