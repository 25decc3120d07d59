import { Places, problem, type Block, type Problem } from '../language/index.js';
import { decisionRules, workRules, type CautionTopic, type Estimate, type Labour, type Option } from '../estimate/index.js';
import { cautionsOf } from './cautions.js';
import { chancesOf } from './chances.js';
import { partsIn, returnsOf, type Returns } from './cores.js';
import { difference, given, greatest, sum, type Figure } from './figure.js';
import { keeper } from './keep.js';
import { lazily } from './lazily.js';
import { moneyOf, type Money } from './money.js';
import { whileOpen, type WhileOpen } from './open.js';
import { MOST_PINNED, planWork, type Planned, type Work } from './plan.js';
import { readyOf, type Ready } from './ready.js';
import { restsOn } from './rests-on.js';
import { weighStages, type StageWeighed } from './stage.js';
import type { Totals } from './totals.js';
import { MOST_WAYS } from './ways.js';

/** The access penalty: what the option costs more than the same work would on an engine stand. */
export interface Penalty {
  readonly money: Figure;
  readonly hours: Figure;
}

/** One option, weighed. */
export interface Weighed {
  readonly option: Option;
  readonly planned: Planned;
  readonly totals: Totals;
  readonly penalty: Penalty;
  readonly returns: Returns;
  /** What is paid in the end: the total less what comes back. */
  readonly net: Figure;
  /** What the vehicle is worth after it, where the estimate says so. */
  readonly worthAfter: Figure | undefined;
  /** Worth that the option gives up, measured by the option that leaves the most. */
  readonly givenUp: Figure | undefined;
  /** By this figure options are compared: net, and the worth given up. */
  readonly inAll: Figure;
  readonly ready: Ready;
  readonly open: readonly WhileOpen[];
  readonly cautions: readonly CautionTopic[];
  /** False where a line that it rests on could not be read or priced: its figures may be too low. */
  readonly complete: boolean;
}

/** All options of an estimate, side by side. */
export interface Comparison {
  readonly estimate: Estimate;
  readonly money: Money;
  readonly options: readonly Weighed[];
  /** What comes before the decision, each by itself. */
  readonly stages: readonly StageWeighed[];
  /** The options that compete, cheapest first. */
  readonly ranking: readonly Weighed[];
  /** Problems that only weighing can find. */
  readonly problems: readonly Problem[];
}

/**
 * Weighs every option of an estimate. `flawed` holds the blocks that have errors: an option that rests on one of
 * them is weighed as far as it goes and marked incomplete.
 */
export function weigh(estimate: Estimate, flawed: ReadonlySet<Block>): Comparison {
  const money = moneyOf(estimate.shop.currency, estimate.shop.rounding);
  const problems: Problem[] = [];
  const mostWorth = greatestWorth(estimate);
  // Whatever an option's worth is measured by. The amounts, not their maximum: they keep their identity.
  const worths = estimate.options.map((option) => option.worth);
  const options = estimate.options.map((option) => weighOption(option, estimate, money, { most: mostWorth, worths }, flawed, problems));
  const ranking = options.filter(competes).sort((a, b) => a.inAll.likely.comparedTo(b.inAll.likely));
  return { estimate, money, options, stages: weighStages(estimate, money, flawed), ranking, problems };
}

/** Whether an option can be chosen: it is whole, and nothing that was found speaks against it. */
export function competes({ complete, option: { ruledOutBy } }: Pick<Weighed, 'complete' | 'option'>): boolean {
  return complete && ruledOutBy.length === 0;
}

type Later = 'ready' | 'penalty' | 'open' | 'cautions';

/** What a keystroke in a long file does not ask for is worked out when somebody does. */
type Kept = Omit<Weighed, 'complete' | Later> & { readonly later: { readonly [what in Later]: () => Weighed[what] } };

const keepWeighed = keeper<Option, Kept>();

function weighOption(option: Option, estimate: Estimate, money: Money, { most, worths }: { readonly most: Figure | undefined; readonly worths: readonly unknown[] }, flawed: ReadonlySet<Block>, problems: Problem[]): Weighed {
  const { shop, header, vehicle, access, consider } = estimate;
  const weighed = keepWeighed(option, [shop, header, vehicle, money, ...access, ...consider, ...worths], () => weighKept(option, estimate, money, most));
  report(option, weighed, estimate, money, problems);
  const { later, ...rest } = weighed;
  return {
    ...rest,
    complete: isComplete(option, weighed.planned, estimate, flawed),
    get ready() { return later.ready(); },
    get penalty() { return later.penalty(); },
    get open() { return later.open(); },
    get cautions() { return later.cautions(); },
  };
}

function weighKept(option: Option, estimate: Estimate, money: Money, mostWorth: Figure | undefined): Kept {
  const work: Work = { ...option, access: estimate.access };
  const planned = planWork(work, estimate.shop, money);
  const { totals } = planned.chosen;
  const ready = lazily(() => readyOf(planned.chosen, option, estimate));
  const returns = returnsOf({ parts: partsIn(option, planned.chosen), harvests: option.harvests }, totals.lines, { get date() { return ready().date; }, orderedOn: (arrives) => ready().orderedOn(arrives) }, estimate, money);
  const net = difference('What is paid in the end', 'money', [totals.total, returns.all]);
  const worthAfter = worthOf(option, estimate);
  const givenUp = worthAfter === undefined || mostWorth === undefined ? undefined : difference('Worth given up', 'money', [mostWorth, worthAfter]);
  return {
    option, planned, totals, returns, net, worthAfter, givenUp,
    inAll: sum('Cost in all', 'money', [net, ...(givenUp === undefined ? [] : [givenUp])]),
    later: {
      ready,
      penalty: lazily(() => ({
        money: difference('Access penalty', 'money', [totals.total, planned.stand.totals.total]),
        hours: difference('Access penalty in hours', 'hours', [totals.hours, planned.stand.totals.hours]),
      })),
      // On what is left open and sold nobody does more work.
      open: lazily(() => (planned.tooMany === undefined && option.staged?.then !== 'left open' ? whileOpen(work, { total: totals.total, hours: totals.hours }, estimate, money) : [])),
      cautions: lazily(() => cautionsOf(option, planned.chosen.paid)),
    },
  };
}

function isComplete(option: Option, planned: Planned, estimate: Estimate, flawed: ReadonlySet<Block>): boolean {
  if (planned.unreachable.length > 0 || planned.tooMany !== undefined) return false;
  if (flawed.size === 0) return true;
  return [...restsOn(option, estimate)].every((block) => !flawed.has(block));
}

const ordering = new Places<Labour>((job) => job.after.length > 0);

/** Only what says `after` can go round in a circle. */
function saysOrder({ record, labour, sublets }: Option, { chosen }: Planned): boolean {
  return ordering.itemsIn(labour, record).length > 0 || [...sublets, ...chosen.paid.flatMap((way) => way.sublets)].some((sublet) => sublet.after.length > 0);
}

function report(option: Option, { planned, later }: Pick<Kept, 'planned' | 'later'>, estimate: Estimate, money: Money, problems: Problem[]): void {
  const chances = chancesOf({ option, planned }, estimate, money);
  if (chances.all > chances.counted.length) problems.push(problem(decisionRules.tooManyChances, option.at, { count: chances.all, most: chances.counted.length }));
  const { circle } = saysOrder(option, planned) ? later.ready() : {};
  if (circle !== undefined) problems.push(problem(decisionRules.orderCircle, option.at, { chain: [...circle, ...circle.slice(0, 1)] }));
  if (planned.tooMany !== undefined) problems.push(problem(workRules.tooManyWays, option.at, { count: planned.tooMany, ...(option.way === undefined ? { most: MOST_WAYS, pinned: false } : { most: MOST_PINNED, pinned: true }) }));
  for (const job of planned.unreachable) {
    if (option.staged?.labour.includes(job) === true) continue; // the stage says so, once
    const takes = job.modes.map((mode) => mode.with.map((way) => way.name).join(' and ')).join(', or ');
    // Without a pin every way in is there to be taken.
    problems.push(problem(workRules.noWayIn, option.wayAt ?? option.at, { job: job.title, option: option.name, takes }));
  }
}

/** Worth after an option: its own, or the vehicle's. */
function worthOf(option: Option, estimate: Estimate): Figure | undefined {
  const amount = option.worth ?? estimate.vehicle?.worth;
  return amount === undefined ? undefined : given(option.written ? 'Worth of the vehicle afterwards' : 'What it brings as it stands', 'money', amount);
}

/** The most that any option leaves; worth is only compared where every option has one. */
function greatestWorth(estimate: Estimate): Figure | undefined {
  const worths = estimate.options.map((option) => worthOf(option, estimate));
  if (worths.length === 0 || worths.some((worth) => worth === undefined)) return undefined;
  return greatest('Most that any option leaves', worths as [Figure, ...Figure[]]);
}
