import type { Access, Chance, Estimate, Shop } from '../../estimate/index.js';
import { one, zero } from '../../vocabulary/index.js';
import { chancesOf, type ChanceIn } from '../chances.js';
import { withoutCores } from '../cores.js';
import { difference, greatest, sum, times, type Figure } from '../figure.js';
import type { Line } from '../line.js';
import type { Money } from '../money.js';
import { fixedLines, linesOfWays, lineWith, planWork, type Plan } from '../plan.js';
import { feeLine } from '../price-goods.js';
import type { PlannedWork } from '../planned-work.js';
import { fixedOf, total } from '../totals.js';
import type { Weighed } from '../weigh.js';

/** A chance of an option with what it then takes, priced with the option's ways in open. */
export interface ModelChance {
  readonly chance: Chance;
  readonly parent: number | undefined;
  /** From 0 to 1. */
  readonly likelihood: number;
  /** 1 where it happens, 0 where not. */
  readonly gate: Figure;
  /** For the calendar; undefined where it happens after the vehicle has left. */
  readonly work: PlannedWork | undefined;
}

/** A core whose refund depends on the day on which the vehicle is ready. */
export interface ModelCore {
  readonly inTime: Figure;
  /** YYYY-MM-DD. */
  readonly deadline: string;
}

/**
 * An option with its chances as one derivation: the quoted one, in which every line that a chance adds is multiplied
 * by 0 or 1. Fees, caps and taxes are worked out on what really happens. The ways in are those that the quote pays
 * for; a chance that needs more takes its own cheapest way beside them. A core that a chance's part would bring is
 * put together and taken to go back in full.
 */
export interface OptionModel {
  readonly weighed: Weighed;
  readonly chances: readonly ModelChance[];
  readonly cores: readonly ModelCore[];
  /** What is paid to the shop for the work, with what turned up. */
  readonly total: Figure;
  /** Cost in all, with what turned up, comebacks included. */
  readonly inAll: Figure;
}

export function modelOf(weighed: Weighed, estimate: Estimate, money: Money): OptionModel {
  const { option, planned: { chosen }, returns, givenUp } = weighed;
  const { shop } = estimate;
  const chances = chancesOf(option, chosen, estimate).counted.map((one) => modelChance(one, chosen, estimate, money));
  const open = chances.filter(({ work }) => work !== undefined);
  const had = new Set<unknown>(chosen.totals.lines.map(({ record }) => record));
  const jobs = [...chosen.jobs.map(({ line }) => line), ...onceEach(open.flatMap(({ work, gate }) => (work as PlannedWork).jobs.map(({ line }) => ({ line, gate }))))];
  const brought = open.map((one) => ({ one, goods: goodsOf(one, shop, money).filter(({ record }) => !had.has(record)) }));
  const goods = [...onceEach(brought.flatMap(({ one: { gate }, goods: lines }) => lines.map((line) => ({ line, gate })))), ...brought.flatMap(({ one, goods: lines }) => feesOf(one, lines, money))];
  const opened = [...chosen.opened, ...extraWays(open, estimate, money)];
  const fixed = fixedOf([...fixedLines(option, shop, money), ...goods]);
  const paid = (fees: Shop['fees']) => total(option.title, jobs, opened, fixed, option.fees, { ...shop, fees }, money).total;
  // The shop's fees are charged where there is labour, which may be what turns up alone.
  const working = brought.flatMap(({ one: { work, gate }, goods: lines }) => ((work as PlannedWork).jobs.length > 0 || lines.some(({ kind }) => kind === 'labour') ? [gate] : []));
  const [first, ...others] = chosen.totals.lines.some(({ kind }) => kind === 'labour') ? [] : working;
  const whole = first === undefined ? paid(shop.fees) : sum(option.title, 'money', [paid([]), times('Fees of the shop', 'money', [greatest('Any work', [first, ...others]), difference('Fees of the shop', 'money', [paid(shop.fees), paid([])])])]);
  const comebacks = chances.filter(({ work }) => work === undefined).map(({ chance, gate }) => times(chance.title, 'money', [gate, comebackTotal(chance, estimate, money)]));

  const cores = returns.cores.flatMap((core): ModelCore[] => (core.deadline === undefined ? [] : [{ deadline: core.deadline, inTime: gateOf(`${core.part.title}: core back in time`, core.core.at, !core.late) }]));
  const back = returns.cores.map((core) => {
    const inTime = cores.find((one) => one.inTime.at === core.core.at)?.inTime;
    return inTime === undefined ? core.inTime : times(`${core.part.title}: core refund`, 'money', [inTime, core.inTime]);
  });
  const net = difference('What is paid in the end', 'money', [whole, ...back, returns.salvage]);
  const inAll = sum('Cost in all', 'money', [net, ...(givenUp === undefined ? [] : [givenUp]), ...comebacks]);
  return { weighed, chances, cores, total: whole, inAll };
}

/** A figure that is 1 or 0. Its place in the text stands for it. */
function gateOf(label: string, at: Figure['at'], isOn: boolean): Figure {
  const value = isOn ? one : zero;
  return { label, unit: 'number', low: value, likely: value, high: value, step: { kind: 'given' }, from: [], at, ranged: false };
}

function modelChance({ chance, parent, when }: ChanceIn, plan: Plan, estimate: Estimate, money: Money): ModelChance {
  const likelihood = chance.percent === undefined ? 0 : chance.percent.likely.toNumber() / 100;
  // Shut in the quote.
  const gate = gateOf(chance.title, chance.at, false);
  if (when === 'comeback') return { chance, parent, likelihood, gate, work: undefined };
  const open = new Set(plan.paid.flatMap((way) => [way, ...way.includes]));
  const ways = waysBeyond(chance, open, estimate, money);
  const all = new Set([...open, ...ways.flatMap((way) => [way, ...way.includes])]);
  const done = new Set(plan.jobs.map(({ job }) => job));
  const jobs = chance.labour.flatMap((job) => (done.has(job) ? [] : (lineWith(job, all, money) ?? [])));
  return { chance, parent, likelihood, gate, work: { jobs, ways, parts: chance.parts, sublets: chance.sublets } };
}

/** The cheapest ways in for the work of a chance that what is open does not reach. */
function waysBeyond(chance: Chance, open: ReadonlySet<Access>, { shop, access }: Estimate, money: Money): readonly Access[] {
  const beyond = chance.labour.filter((job) => job.modes.length > 0 && lineWith(job, open, money) === undefined);
  if (beyond.length === 0) return [];
  const { chosen } = planWork({ title: chance.title, labour: beyond, parts: [], sublets: [], fees: [], way: undefined, access }, shop, money);
  return chosen.paid.filter((way) => !open.has(way));
}

function comebackTotal(chance: Chance, { shop, access }: Estimate, money: Money): Figure {
  const { title, labour, parts, sublets, fees } = chance;
  const { chosen } = planWork({ title, labour, parts, sublets, fees, way: undefined, access }, shop, money);
  const fixed = fixedOf(withoutCores(fixedLines(chance, shop, money)));
  return total(title, chosen.jobs.map(({ line }) => line), withoutCores(chosen.opened), fixed, fees, shop, money).total;
}

function gated(line: Line, gate: Figure): Line {
  return {
    ...line,
    amount: times(line.title, 'money', [gate, line.amount]),
    hours: line.hours === undefined ? undefined : times(line.title, 'hours', [gate, line.hours]),
  };
}

/**
 * A line that several chances bring is paid once if any of them happens, as the first of them has it; what the option has
 * anyway is not among them. So the price is that of the option with what turned up written into it.
 */
function onceEach(brought: readonly { readonly line: Line; readonly gate: Figure }[]): Line[] {
  const by = new Map<unknown, { readonly line: Line; readonly gates: Figure[] }>();
  for (const { line, gate } of brought) {
    const known = by.get(line.record);
    if (known === undefined) by.set(line.record, { line, gates: [gate] });
    else known.gates.push(gate);
  }
  return [...by.values()].map(({ line, gates }) => gated(line, anyOf(line.title, gates)));
}

function anyOf(title: string, gates: readonly Figure[]): Figure {
  return gates.length === 1 ? (gates[0] as Figure) : greatest(title, gates as [Figure, ...Figure[]]);
}

/** Parts, outside work and hires of a chance, and putting together the old units that go back. */
function goodsOf({ chance }: ModelChance, shop: Shop, money: Money): readonly Line[] {
  return withoutCores(fixedLines(chance, shop, money));
}

/** Fees of a chance. Percentages are of what it adds in work and goods. */
function feesOf({ chance, gate, work }: ModelChance, goods: readonly Line[], money: Money): Line[] {
  const all = [...goods, ...(work?.jobs ?? []).map(({ line }) => line)];
  const of = (kind: Line['kind']) => sum(chance.title, 'money', all.filter((line) => line.kind === kind).map((line) => line.amount));
  return chance.fees.flatMap((fee) => feeLine(fee, { labour: of('labour'), parts: of('part'), sublets: of('sublet') }, money) ?? []).map((line) => gated(line, gate));
}

/** The lines of ways in that chances need beyond the option's own, each paid once if any of its chances happens. */
function extraWays(open: readonly ModelChance[], estimate: Estimate, money: Money): Line[] {
  const by = new Map<Access, Figure[]>();
  for (const { work, gate } of open) for (const way of work?.ways ?? []) by.set(way, [...(by.get(way) ?? []), gate]);
  return [...by].flatMap(([way, gates]) => {
    return withoutCores(linesOfWays([way], estimate.shop, money)).map((line) => gated(line, anyOf(way.title, gates)));
  });
}
