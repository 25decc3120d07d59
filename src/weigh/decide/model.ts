import type { Span } from '../../language/index.js';
import type { Chance, Estimate, Shop } from '../../estimate/index.js';
import { one, zero } from '../../vocabulary/index.js';
import { broughtBy, type Brought } from '../brought.js';
import { chancesOf, type ChanceIn } from '../chances.js';
import { withoutCores } from '../cores.js';
import { difference, greatest, sum, times, type Figure } from '../figure.js';
import type { Line } from '../line.js';
import type { Money } from '../money.js';
import { planWork } from '../plan.js';
import { fixedLines } from '../plan-goods.js';
import type { PlannedWork } from '../planned-work.js';
import { fixedOf, total } from '../totals.js';
import type { Weighed } from '../weigh.js';
import { plansOf, type PlanIn } from './state-plan.js';

/** A chance of an option with what it then takes, priced with the option's ways in open. */
export interface ModelChance {
  readonly chance: Chance;
  /** Places of the chances of which one must happen before it can; none where it hangs on nothing. */
  readonly under: readonly number[];
  /** From 0 to 1, where it can happen. */
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
  readonly planIn: PlanIn;
}

export function modelOf(weighed: Weighed, estimate: Estimate, money: Money): OptionModel {
  const { option, planned: { chosen }, returns, givenUp } = weighed;
  const { shop } = estimate;
  const modelled = chancesOf(weighed, estimate, money).counted.map((one) => modelChance(one, weighed, estimate, money));
  const chances = modelled.map(({ chance }) => chance);
  const brought = modelled.flatMap(({ chance: { gate }, brought: its }) => (its === undefined ? [] : [{ gate, ...its }]));
  const gatedAs = (of: (one: Brought) => readonly Line[]) => brought.flatMap(({ gate, ...one }) => of(one).map((line) => ({ line, gate })));
  const jobs = [...chosen.jobs.map(({ line }) => line), ...onceEach(gatedAs((one) => one.jobs.map(({ line }) => line)))];
  // What one chance needs to get in another may bring by itself: it is paid once all the same.
  const goods = onceEach([...gatedAs((one) => one.goods), ...gatedAs((one) => one.opened)]);
  const fees = gatedAs((one) => one.fees).map(({ line, gate }) => gated(line, gate));
  const opened = [...chosen.opened, ...goods.filter(({ share }) => share === 'access')];
  const fixed = fixedOf([...fixedLines(option, shop, money), ...goods.filter(({ share }) => share === 'work'), ...fees]);
  const paid = (fees: Shop['fees']) => total(option.title, jobs, opened, fixed, option.fees, { ...shop, fees }, money).total;
  // The shop's fees are charged where there is labour, which may be what turns up alone.
  const working = brought.flatMap(({ gate, jobs: { length }, goods: own, opened: ways }) => (length > 0 || [...own, ...ways].some(({ kind }) => kind === 'labour') ? [gate] : []));
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
  return { weighed, chances, cores, total: whole, inAll, planIn: plansOf(weighed, chances.map(({ work }) => work), estimate) };
}

/** A figure that is 1 or 0. Its place in the text stands for it. */
function gateOf(label: string, at: Figure['at'], isOn: boolean): Figure {
  const value = isOn ? one : zero;
  return { label, unit: 'number', low: value, likely: value, high: value, step: { kind: 'given' }, from: [], at, ranged: false };
}

interface Modelled {
  readonly chance: ModelChance;
  /** Undefined where it happens after the vehicle has left. */
  readonly brought: Brought | undefined;
}

function modelChance({ chance, under, when }: ChanceIn, weighed: Weighed, estimate: Estimate, money: Money): Modelled {
  const likelihood = chance.percent === undefined ? 0 : chance.percent.likely.toNumber() / 100;
  // Shut in the quote.
  const gate = gateOf(chance.title, chance.at, false);
  if (when === 'comeback') return { chance: { chance, under, likelihood, gate, work: undefined }, brought: undefined };
  const brought = broughtBy(chance, weighed, estimate, money);
  const work = { jobs: brought.jobs, ways: brought.ways, parts: chance.parts, sublets: chance.sublets };
  return { chance: { chance, under, likelihood, gate, work }, brought };
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
  // By place: removing a way in and refitting it are two lines of one record.
  const by = new Map<Span, { readonly line: Line; readonly gates: Figure[] }>();
  for (const { line, gate } of brought) {
    const known = by.get(line.at);
    if (known === undefined) by.set(line.at, { line, gates: [gate] });
    else known.gates.push(gate);
  }
  return [...by.values()].map(({ line, gates }) => gated(line, anyOf(line.title, gates)));
}

function anyOf(title: string, gates: readonly Figure[]): Figure {
  return gates.length === 1 ? (gates[0] as Figure) : greatest(title, gates as [Figure, ...Figure[]]);
}
