import type { Access, Labour, Mode, Option, Part, Shop, Tool } from '../estimate/index.js';
import { zero, type Decimal } from '../vocabulary/index.js';
import type { Line } from './line.js';
import type { Money } from './money.js';
import { accessWork, assembleLine, labourLine, toolLine } from './price-labour.js';
import { coreLine, partLine, subletLine } from './price-goods.js';
import { fixedOf, total, type Totals } from './totals.js';
import { cheapestWays, MOST_WAYS, type RankedPlan } from './ways.js';

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
  readonly totals: Totals;
}

/** What is asked of the planner: some jobs and goods. An option is one, and so is a job to do on its own later. */
export interface Work {
  readonly title: string;
  readonly labour: Option['labour'];
  readonly parts: Option['parts'];
  readonly sublets: Option['sublets'];
  readonly fees: Option['fees'];
  readonly way: Option['way'];
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
  /** Set where there were too many ways in to choose among; then nothing but pinned plans is worked out. */
  readonly tooMany: number | undefined;
}

const RUNNERS_UP = 3;

/** A mode with the bits of the ways in it takes, and its line. */
interface LinedMode {
  readonly mode: Mode;
  readonly takes: number;
  readonly line: Line;
}

/** Plans how to get at the work: the cheapest plan, its runners-up, and the stand to measure the penalty by. */
export function planWork(work: Work, shop: Shop, money: Money): Planned {
  const ways = waysOf(work);
  const bit = new Map(ways.map((way, i) => [way, 1 << i]));
  const mask = (list: readonly Access[]) => list.reduce((bits, way) => bits | (bit.get(way) ?? 0), 0);
  const everything = ways.length >= 31 ? -1 : (1 << ways.length) - 1;
  const pinned = work.way === undefined ? undefined : mask(work.way);
  const reachable = pinned === undefined ? everything : given(pinned);

  const lined = work.labour.map((job) => ({ job, modes: job.modes.map((mode): LinedMode => ({ mode, takes: mask(mode.with), line: labourLine(job, mode, money) })) }));
  const doableWith = (gives: number) => lined.filter(({ modes }) => modes.some((mode) => (mode.takes & ~gives) === 0));
  const unreachable = lined.filter(({ modes }) => modes.length > 0 && modes.every((mode) => (mode.takes & ~reachable) !== 0)).map(({ job }) => job);
  const fixed = fixedOf(fixedLines(work, shop, money));
  const opening = ways.map((way) => goodsOfWay(way, work, shop, money));

  const price = (paid: number, gives: number): Plan => {
    const jobs: PlannedJob[] = [];
    for (const { job, modes } of lined) {
      let best: LinedMode | undefined;
      for (const mode of modes) if ((mode.takes & ~gives) === 0 && (best === undefined || cheaper(mode.line, best.line))) best = mode;
      if (best !== undefined) jobs.push({ job, mode: best.mode, line: best.line });
    }
    const opened = onceEach(opening.filter((_, i) => (paid & (1 << i)) !== 0).flat());
    const totals = total(work.title, jobs.map((job) => job.line), opened, fixed, work.fees, shop, money);
    return { ways: paid, paid: ways.filter((_, i) => (paid & (1 << i)) !== 0), jobs, totals, money: totals.total.likely, hours: totals.hours.likely };
  };
  const planOf = (paid: number) => price(paid, given(paid));
  const stand = price(0, everything);
  const tooMany = ways.length > MOST_WAYS ? ways.length : undefined;
  if (pinned !== undefined) {
    const free = tooMany === undefined ? search(1)[0] : undefined;
    return { chosen: planOf(pinned), others: tooMany === undefined ? search(RUNNERS_UP).filter((plan) => plan.ways !== pinned) : [], unpinned: free, stand, unreachable, tooMany: undefined };
  }
  if (tooMany !== undefined) return { chosen: stand, others: [], unpinned: undefined, stand, unreachable, tooMany };
  const [chosen, ...others] = search(RUNNERS_UP + 1);
  return { chosen: chosen ?? planOf(0), others, unpinned: undefined, stand, unreachable, tooMany };

  function given(paid: number): number {
    return ways.reduce((bits, way, i) => ((paid & (1 << i)) === 0 ? bits : bits | (1 << i) | mask(way.includes)), 0);
  }

  function search(most: number): Plan[] {
    return cheapestWays<Plan>({
      gives: ways.map((way, i) => (1 << i) | mask(way.includes)),
      prices: opening.map((goods) => sumOf(goods.filter(({ thing }) => !sharedWith(thing, opening, goods)).flatMap(({ lines }) => lines))),
      jobs: doableWith(everything).map(({ modes }) => modes.map(({ takes, line }) => ({ takes, price: line.amount.likely, hours: line.hours?.likely ?? zero }))),
      base: sumOf(fixed.lines),
      plan: planOf,
    }, most);
  }
}

/** Cheaper, or as cheap and quicker; the earlier line wins a tie. */
function cheaper(a: Line, b: Line): boolean {
  const order = a.amount.likely.comparedTo(b.amount.likely) || (a.hours?.likely ?? zero).comparedTo(b.hours?.likely ?? zero);
  return order < 0;
}

function sumOf(lines: readonly Line[]): Decimal {
  return lines.reduce((total, line) => total.plus(line.amount.likely), zero);
}

/** Every way in that some mode of the work takes or that gives one of those, and the pinned ones. */
function waysOf(work: Work): Access[] {
  const ways = new Set<Access>(work.way ?? []);
  for (const job of work.labour) for (const mode of job.modes) for (const way of mode.with) ways.add(way);
  for (const way of work.access) if (way.includes.some((one) => ways.has(one))) ways.add(way);
  return [...ways];
}

/** The lines that stand whatever the way in. */
function fixedLines(work: Work, shop: Shop, money: Money): Line[] {
  const lines: Line[] = [];
  for (const part of work.parts) lines.push(...partLines(part, 'work', shop, money));
  for (const sublet of work.sublets) lines.push(subletLine(sublet, 'work', shop, money));
  for (const tool of toolsOf(work.labour)) {
    const hire = toolLine(tool, 'work', money);
    if (hire !== undefined) lines.push(hire);
  }
  return lines;
}

function partLines(part: Part, share: Line['share'], shop: Shop, money: Money): Line[] {
  const line = partLine(part, share, shop, money);
  const core = coreLine(part, money);
  const assemble = part.core?.assemble;
  const together = core === undefined || assemble === undefined ? [] : [assembleLine(`${part.title}: put the core together`, assemble, part.core?.rate, core, money)];
  return [line, ...(core === undefined ? [] : [core]), ...together];
}

/** Something that a way in needs, with its lines. Goods that two ways use are one thing, and charged once. */
interface Opening {
  readonly thing: object;
  readonly lines: readonly Line[];
}

/** What a way in needs, without the goods and tools that the work brings along anyway. */
function goodsOfWay(way: Access, work: Work, shop: Shop, money: Money): Opening[] {
  const tools = toolsOf(work.labour);
  return [
    { thing: way, lines: accessWork(way, money) },
    ...way.parts.filter((part) => !work.parts.includes(part)).map((part) => ({ thing: part, lines: partLines(part, 'access', shop, money) })),
    ...way.sublets.filter((sublet) => !work.sublets.includes(sublet)).map((sublet) => ({ thing: sublet, lines: [subletLine(sublet, 'access', shop, money)] })),
    ...way.tools.filter((tool) => !tools.includes(tool)).map((tool) => ({ thing: tool, lines: [toolLine(tool, 'access', money) ?? []].flat() })),
  ];
}

function onceEach(goods: readonly Opening[]): Line[] {
  const seen = new Set<object>();
  return goods.flatMap(({ thing, lines }) => {
    if (seen.has(thing)) return [];
    seen.add(thing);
    return lines;
  });
}

/** A thing that another way uses too is left out of the bound, which must never be above the true price. */
function sharedWith(thing: object, all: readonly (readonly Opening[])[], own: readonly Opening[]): boolean {
  return all.some((goods) => goods !== own && goods.some((other) => other.thing === thing));
}

export function toolsOf(jobs: readonly Labour[]): Tool[] {
  return [...new Set(jobs.flatMap((job) => job.tools))];
}
