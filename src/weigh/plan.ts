import { sameItems, Slot } from '../language/index.js';
import { heldByPriced, type Access, type Labour, type Mode, type Option, type Shop } from '../estimate/index.js';
import { one, Tally, zero, type Decimal } from '../vocabulary/index.js';
import { besideLeast, constant, least, type Figure } from './figure.js';
import { lazily } from './lazily.js';
import type { Line } from './line.js';
import type { Money } from './money.js';
import { fixedLines, goodsOfWay, onceEach, sharedWith, type BroughtAlong } from './plan-goods.js';
import { labourLine, labourPrice } from './price-labour.js';
import { fixedOf, total, type Totals } from './totals.js';
import { cheapestFirst, cheapestMode, cheapestWays, MOST_WAYS, type RankedPlan, type WayMode } from './ways.js';

/** A job and the mode in which a plan does it. */
export interface PlannedJob {
  readonly job: Labour;
  readonly mode: Mode;
  readonly line: Line;
}

/** One way of doing an option's work: the ways in it pays for, how each job is then done, and what all comes to. */
export interface Plan extends RankedPlan {
  readonly paid: readonly Access[];
  readonly jobs: readonly PlannedJob[];
  /** Lines of getting in and closing up, with the goods of the ways. */
  readonly opened: readonly Line[];
  readonly totals: Totals;
}

/** What is asked of the planner: some jobs and goods. An option is one, and so is a job to do on its own later. */
export interface Work extends BroughtAlong {
  readonly title: string;
  readonly fees: Option['fees'];
  readonly way: Option['way'];
  /** What comes before the decision: ways in that every plan pays for, and jobs that are done with just these. */
  readonly staged?: Option['staged'];
  /** Every way in that the estimate knows: a dearer one that includes what a job takes may still be the best. */
  readonly access: readonly Access[];
}

export interface Planned {
  readonly chosen: Plan;
  /** The next cheapest plans, best first. */
  readonly others: readonly Plan[];
  /** Where the ways in are pinned: the plan that would have been chosen. */
  readonly unpinned: Plan | undefined;
  /** The same work on an engine stand: every way in given, none paid for. */
  readonly stand: Plan;
  /** Jobs that can't be reached, and are left out. */
  readonly unreachable: readonly Labour[];
  /** Set where there were too many ways in to choose among, or pinned; then the plan is that of an engine stand. */
  readonly tooMany: number | undefined;
}

const RUNNERS_UP = 3;

/** A job's mode with the bits of the ways in it takes. Its line is made where a plan takes it: most modes are only compared. */
class LinedMode implements WayMode, PlannedJob {
  readonly price: Decimal;
  private made: Line | undefined;

  constructor(
    readonly job: Labour,
    readonly mode: Mode,
    readonly takes: number,
    private readonly money: Money,
  ) {
    this.price = labourPrice(job, mode, money);
  }

  get line(): Line {
    return (this.made ??= labourLine(this.job, this.mode, this.money));
  }

  get hours(): Decimal {
    return this.line.hours?.likely ?? zero;
  }
}

/**
 * Plans how to get at the work: the cheapest plan, its runners-up, and the stand to measure the penalty by. Only the plan
 * that is chosen is worked out at once.
 */
export function planWork(work: Work, shop: Shop, money: Money): Planned {
  const { known, told, pinned, always, unreachable, price, planOf, search } = plannerOf(work, shop, money, cheapestMode);
  const tooMany = known > MOST_WAYS ? known : undefined;
  const tooManyPinned = pinned !== undefined && told > MOST_PINNED ? told : undefined;
  const stand = lazily(() => price(0, EVERYTHING, `${work.title} (the work on an engine stand)`));
  const chosen = choose();
  const others = lazily(() => {
    if (tooMany !== undefined) return [];
    return pinned === undefined ? search(RUNNERS_UP + 1).slice(1) : search(RUNNERS_UP).filter((plan) => plan.ways !== pinned);
  });
  const unpinned = lazily(() => (pinned === undefined || tooMany !== undefined ? undefined : search(1)[0]));
  return {
    chosen, unreachable,
    tooMany: pinned === undefined ? tooMany : tooManyPinned,
    get others() { return others(); },
    get unpinned() { return unpinned(); },
    get stand() { return stand(); },
  };

  function choose(): Plan {
    if (pinned !== undefined && tooManyPinned === undefined) return planOf(pinned);
    return tooMany === undefined ? (search(1)[0] ?? planOf(always)) : price(0, EVERYTHING);
  }
}

/**
 * The plans among which the choice lies when figures move, cheapest first as they stand: the pinned one, or up to
 * `most`. A job that can be done in several of a plan's ways has the least of their amounts, whichever that is.
 */
export function plansToSearch(work: Work, shop: Shop, money: Money, most: number): readonly Plan[] {
  const { known, told, pinned, planOf, search } = plannerOf(work, shop, money, leastOf);
  if (pinned !== undefined) return told > MOST_PINNED ? [] : [planOf(pinned)];
  return known > MOST_WAYS ? [] : search(most, 'any mode');
}

/** Which sets of ways in are looked at: those whose ways all make some job cheaper as it stands, or all that open some mode. */
type WaysFor = 'cheapest modes' | 'any mode';

/** The line of a job that can be done in several modes, with the ways in that are open; undefined where it can't. */
type ChooseLine = (modes: readonly LinedMode[], gives: number) => PlannedJob | undefined;

/** Every bit: with all ways in given. */
const EVERYTHING = -1;
/** Each way in of a pin, and of what that includes, has a bit of its own; there are 32. */
export const MOST_PINNED = 31;
/** The bit of every way in that no plan opens. */
const OUT_OF_REACH = 1 << MOST_PINNED;

interface Planner {
  /** How many ways in the work knows. */
  readonly known: number;
  /** Those among which a plan chooses, or of which it is made where they are pinned. */
  readonly told: number;
  readonly pinned: number | undefined;
  readonly always: number;
  readonly unreachable: readonly Labour[];
  /** `label` is what its total is called: the title of the work, where nothing is said. */
  readonly price: (paid: number, gives: number, label?: string) => Plan;
  readonly planOf: (paid: number) => Plan;
  readonly search: (most: number, of?: WaysFor) => Plan[];
}

function plannerOf(work: Work, shop: Shop, money: Money, choose: ChooseLine): Planner {
  const all = waysOf(work);
  // Those that are pinned or opened before, and what they give, are few, however many there are to choose among.
  const sure = [...(work.way ?? []), ...(work.staged?.ways ?? [])];
  const ways = work.way === undefined || all.length <= MOST_WAYS ? all : [...new Set([...sure, ...sure.flatMap(({ includes }) => includes).filter((one) => all.includes(one))])];
  const bit = new Map(ways.map((way, i) => [way, 1 << i]));
  const mask = (list: readonly Access[]) => list.reduce((bits, way) => bits | (bit.get(way) ?? 0), 0);
  const takesOf = (mode: Mode) => mode.with.reduce((bits, way) => bits | (bit.get(way) ?? OUT_OF_REACH), 0);
  const always = mask(work.staged?.ways ?? []);
  // What a stage opened gives is open already, and is not paid for where it is pinned as well.
  const pinned = work.way === undefined ? undefined : mask(notIncluded(sure)) | always;
  const reachable = pinned === undefined ? EVERYTHING : given(pinned);

  // What came before the decision was done with what was open then: a way in that is opened later changes nothing of it.
  const openBefore = given(always);
  const inStage = new Set(work.staged?.labour);
  const madeFrom = [money, ...ways];
  const lined = work.labour.map((job) => {
    let known = linedJobs.get(job);
    if (known === undefined || !sameItems(known.madeFrom, madeFrom)) {
      known = { job, madeFrom, modes: cheapestFirst(job.modes.map((mode) => new LinedMode(job, mode, takesOf(mode), money))) };
      linedJobs.set(job, known);
    }
    return inStage.has(job) ? { ...known, modes: doable(known.modes, openBefore) } : known;
  });
  const unreachable = lined.filter(({ job, modes }) => job.modes.length > 0 && cheapestMode(modes, reachable) === undefined).map(({ job }) => job);
  const fixed = fixedOf(fixedLines(work, shop, money));
  const opening = ways.map((way) => goodsOfWay(way, work, shop, money));

  const price = (paid: number, gives: number, label = work.title): Plan => {
    const jobs: PlannedJob[] = [];
    for (const { modes } of lined) {
      const best = choose(modes, gives);
      if (best !== undefined) jobs.push(best);
    }
    const opened = onceEach(opening.filter((_, i) => (paid & (1 << i)) !== 0).flat());
    const totals = total(label, jobs.map((job) => job.line), opened, fixed, work.fees, shop, money);
    return { ways: paid, paid: ways.filter((_, i) => (paid & (1 << i)) !== 0), jobs, opened, totals, money: totals.total.likely, hours: totals.hours.likely };
  };
  const planOf = (paid: number) => price(paid, given(paid));
  return { known: all.length, told: ways.length, pinned, always, unreachable, price, planOf, search };

  function given(paid: number): number {
    return ways.reduce((bits, way, i) => ((paid & (1 << i)) === 0 ? bits : bits | (1 << i) | mask(way.includes)), 0);
  }

  function search(most: number, of: WaysFor = 'cheapest modes'): Plan[] {
    const reached = lined.filter(({ modes }) => modes.length > 0).map(({ modes }) => modes);
    return cheapestWays<Plan>({
      gives: ways.map((way, i) => (1 << i) | mask(way.includes)),
      prices: opening.map((goods) => sumOf(goods.filter(({ thing }) => !sharedWith(thing, opening, goods)).flatMap(({ lines }) => lines))),
      jobs: [...reached, ...(of === 'any mode' ? reached.flat().map(wantedFor) : [])],
      base: sumOf(fixed.lines),
      always,
      plan: planOf,
    }, most);
  }
}

/** Of ways in that are asked for, those that no other of them gives anyway: what comes with another is not paid for. */
function notIncluded(asked: readonly Access[]): readonly Access[] {
  return asked.filter((way) => asked.every((other) => !other.includes.includes(way)));
}

/** A job with its modes, cheapest first, for as long as the ways in among which a plan chooses are the same. */
interface LinedJob {
  readonly job: Labour;
  readonly madeFrom: readonly unknown[];
  readonly modes: readonly LinedMode[];
}

const linedJobs = new Slot<LinedJob>(heldByPriced);

/** Those that can be done with these ways in: mostly all of them. */
function doable(modes: readonly LinedMode[], gives: number): readonly LinedMode[] {
  for (const { takes } of modes) if ((takes & ~gives) !== 0) return modes.filter((mode) => (mode.takes & ~gives) === 0);
  return modes;
}

/** Stands in for a mode that may become the cheapest: it costs nothing and hinders nothing, but wants its ways in. */
function wantedFor({ takes }: LinedMode): WayMode[] {
  return [{ takes, price: zero, hours: zero }, { takes: 0, price: zero, hours: one }];
}

/** The mode that costs least, with a line that stays the least when the figures of the modes move. */
function leastOf(modes: readonly LinedMode[], gives: number): PlannedJob | undefined {
  const open = doable(modes, gives);
  const best = cheapestMode(open, gives);
  if (best === undefined || open.length === 1) return best;
  const amounts = open.map(({ line }) => line.amount) as [Figure, ...Figure[]];
  const hours = open.map(({ line }) => line.hours ?? constant(line.title, 'hours', zero)) as [Figure, ...Figure[]];
  const { job, mode, line } = best;
  return { job, mode, line: { ...line, amount: least(line.title, amounts), hours: besideLeast(line.title, amounts, hours) } };
}

/** The line of a job done with these ways open, as cheaply as it can; undefined where it can't be reached. */
export function lineWith(job: Labour, open: ReadonlySet<Access>, money: Money): PlannedJob | undefined {
  const modes = job.modes.filter((mode) => mode.with.every((way) => open.has(way)));
  return cheapestMode(cheapestFirst(modes.map((mode) => new LinedMode(job, mode, 0, money))), 0);
}

function sumOf(lines: readonly Line[]): Decimal {
  const tally = new Tally();
  for (const line of lines) tally.add(line.amount.likely);
  return tally.total();
}

/** Every way in that some mode of the work takes or that gives one of those, the pinned ones, and those that stages open. */
function waysOf(work: Work): Access[] {
  const ways = new Set<Access>(work.way ?? []);
  for (const job of work.labour) for (const mode of job.modes) for (const way of mode.with) ways.add(way);
  for (const way of work.access) if (way.includes.some((one) => ways.has(one))) ways.add(way);
  for (const way of work.staged?.ways ?? []) ways.add(way);
  return [...ways];
}
