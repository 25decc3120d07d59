import type { Access, Chance, Estimate, Option } from '../estimate/index.js';
import { withoutCores } from './cores.js';
import { sum } from './figure.js';
import type { Line } from './line.js';
import type { Money } from './money.js';
import { lineWith, planWork, type Planned, type PlannedJob } from './plan.js';
import { fixedLines, linesOfWays } from './plan-goods.js';
import { feeLine } from './price-goods.js';

/** An option with the way in which it is done. */
export interface OptionPlanned {
  readonly option: Option;
  readonly planned: Pick<Planned, 'chosen'>;
}

/** What a chance brings to an option that does not have it: what is done, fitted, sent or hired anyway is paid already. */
export interface Brought {
  /** Ways in that its work needs beyond those that are open. */
  readonly ways: readonly Access[];
  readonly jobs: readonly PlannedJob[];
  /** Parts, outside work and hires, and putting together the old units that go back. */
  readonly goods: readonly Line[];
  /** Opening those ways and closing them, with what they bring that the chance does not bring itself. */
  readonly opened: readonly Line[];
  /** Percentages are of what it brings in work and goods. */
  readonly fees: readonly Line[];
}

/** Priced with the option's ways in open; what needs more takes its own cheapest way beside them. */
export function broughtBy(chance: Chance, weighed: OptionPlanned, estimate: Estimate, money: Money): Brought {
  const { planned: { chosen } } = weighed;
  const { shop } = estimate;
  const had = new Set<unknown>(chosen.totals.lines.map(({ record }) => record));
  const isNew = ({ record }: Line) => !had.has(record);
  const ways = waysBeyond(chance, weighed, estimate, money);
  const all = given([...chosen.paid, ...ways]);
  const done = new Set(chosen.jobs.map(({ job }) => job));
  const jobs = chance.labour.flatMap((job) => (done.has(job) ? [] : (lineWith(job, all, money) ?? [])));
  const goods = withoutCores(fixedLines(chance, shop, money)).filter(isNew);
  for (const { record } of goods) had.add(record);
  const opened = withoutCores(linesOfWays(ways, shop, money)).filter(isNew);
  return { ways, jobs, goods, opened, fees: feesOf(chance, [...goods, ...jobs.map(({ line }) => line)], money) };
}

function given(paid: readonly Access[]): ReadonlySet<Access> {
  return new Set(paid.flatMap((way) => [way, ...way.includes]));
}

/** The cheapest ways in for the work of a chance that what is open does not reach, for who has the option's goods and the chance's. */
export function waysBeyond(chance: Chance, { option, planned: { chosen } }: OptionPlanned, { shop, access }: Pick<Estimate, 'shop' | 'access'>, money: Money): readonly Access[] {
  const open = given(chosen.paid);
  const beyond = chance.labour.filter((job) => job.modes.length > 0 && !job.modes.some((mode) => mode.with.every((way) => open.has(way))));
  if (beyond.length === 0) return [];
  const { paid, jobs } = chosen;
  const once = <T>(...lists: readonly (readonly T[])[]) => [...new Set(lists.flat())];
  const wanted = planWork({
    title: chance.title, labour: beyond, fees: [], way: undefined, access,
    parts: once(option.parts, chance.parts),
    sublets: once(option.sublets, chance.sublets),
    hired: once(...jobs.map(({ job }) => job.tools), ...chance.labour.map((job) => job.tools)),
    // What the open ways bring comes with them.
    staged: { ways: paid, labour: [], then: 'closed' },
  }, shop, money);
  return wanted.chosen.paid.filter((way) => !open.has(way));
}

function feesOf({ title, fees }: Chance, lines: readonly Line[], money: Money): Line[] {
  const of = (kind: Line['kind']) => sum(title, 'money', lines.filter((line) => line.kind === kind).map((line) => line.amount));
  return fees.flatMap((fee) => feeLine(fee, { labour: of('labour'), parts: of('part'), sublets: of('sublet') }, money) ?? []);
}
