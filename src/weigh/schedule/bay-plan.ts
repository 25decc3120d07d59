import { precedenceTimes } from './bounds.js';
import { assignTechnicians, criticalChain, type ChainLink } from './chain.js';
import { TOLERANCE } from './duration.js';
import type { Layout } from './plan-task.js';
import { latestFinish, listByPriority, predecessorsFirst, PRIORITY_RULES, rankedByKey } from './priority.js';
import { leastFinish, searchLists } from './search.js';
import { SerialGeneration } from './serial.js';

/** When a task is done and by whom. */
export interface PlannedTask {
  readonly start: number;
  readonly end: number;
  /** Counted from 0; undefined for waits and for work of no length, which hold nobody. */
  readonly technician: number | undefined;
}

/** A plan of the bay, in the unit of the durations, counted from the start of the first task. */
export interface BayPlan {
  readonly kind: 'planned';
  /** In the order of the tasks given. */
  readonly tasks: readonly PlannedTask[];
  /** When a task starts, by its place: the same as in `tasks`, without asking who does what. */
  readonly startOf: (task: number) => number;
  /** The end of the last task that counts; 0 where none does. */
  readonly makespan: number;
  /** What no plan can finish before; the makespan itself where that is proven. */
  readonly lowerBound: number;
  /** Whether no plan finishes earlier, but for a share of TOLERANCE. */
  readonly proven: boolean;
  /** How much earlier a better plan could finish at most; 0 where proven. */
  readonly gap: number;
  /** The list of tasks that serial generation makes this plan from. */
  readonly order: Int32Array;
  /** All tasks by their latest finish. */
  readonly ranked: Int32Array;
  /** What the finish hangs on, from the start to the finish: tasks without idle time between. */
  readonly chain: readonly ChainLink[];
}

/** How hard an early finish is looked for. */
export type PlanEffort = 'search' | 'rules';

/**
 * Plans tasks with a number of technicians for the earliest finish: the resource-constrained project scheduling
 * problem with one resource. Serial schedule generation by the latest-finish rule and other priority rules; where the
 * best of them is not as early as a lower bound, branch and bound over lists, up to MOST_WORK pieces of work and
 * MOST_NODES partial lists. Beyond these the best plan found is given with its gap.
 *
 * @param effort `rules` leaves the search out: quicker, with a gap where the rules can't prove their plan.
 * @param near `ranked` of a plan of nearly the same tasks, with which this one is found sooner. It changes nothing of what is found.
 */
export function bayPlan(layout: Layout, effort: PlanEffort, near?: Int32Array): BayPlan {
  const { count, durations, isCounted } = layout;
  const times = precedenceTimes(layout);
  const generation = new SerialGeneration(layout);
  const floor = leastFinish(layout, times);
  const ranked = rankedByKey(layout, latestFinish(layout, times), near);
  const latest = predecessorsFirst(layout, ranked);
  let order = latest;
  let makespan = generation.run(order, durations);
  let generated = order;
  let proven = makespan - floor <= TOLERANCE * makespan;
  for (const rule of PRIORITY_RULES.slice(1)) {
    if (proven) break;
    const other = listByPriority(layout, rule(layout, times));
    const finish = generation.run(other, durations);
    generated = other;
    if (finish < makespan - TOLERANCE * makespan) [order, makespan] = [other, finish];
    proven = makespan - floor <= TOLERANCE * makespan;
  }
  if (!proven && effort === 'search') {
    const rank = new Int32Array(count);
    order.forEach((i, at) => (rank[i] = at));
    const { list, complete } = searchLists(layout, times, rank, makespan, floor);
    if (list !== undefined) order = Int32Array.from([...list, ...latest.filter((i) => isCounted[i] === 0)]);
    proven = complete;
  }
  if (generated !== order) makespan = generation.run(order, durations);
  return new GeneratedPlan(layout, generation, order, ranked, { makespan, lowerBound: proven ? makespan : Math.min(floor, makespan), proven });
}

/** Who does what, and what the finish hangs on, is only worked out where somebody asks: while an estimate is typed, the finish alone counts. */
class GeneratedPlan implements BayPlan {
  readonly kind = 'planned';
  readonly makespan: number;
  readonly lowerBound: number;
  readonly proven: boolean;
  private readonly starts: Float64Array;
  private readonly ends: Float64Array;
  private assigned: readonly (number | undefined)[] | undefined;
  private timed: readonly PlannedTask[] | undefined;
  private traced: readonly ChainLink[] | undefined;

  constructor(private readonly layout: Layout, { starts, ends }: SerialGeneration, readonly order: Int32Array, readonly ranked: Int32Array, { makespan, lowerBound, proven }: Pick<BayPlan, 'makespan' | 'lowerBound' | 'proven'>) {
    this.makespan = makespan;
    this.lowerBound = lowerBound;
    this.proven = proven;
    this.starts = starts;
    this.ends = ends;
  }

  startOf(task: number): number {
    return this.starts[task] as number;
  }

  get gap(): number {
    return this.makespan - this.lowerBound;
  }

  get tasks(): readonly PlannedTask[] {
    return (this.timed ??= this.technicians.map((technician, i) => ({ start: this.starts[i] as number, end: this.ends[i] as number, technician })));
  }

  get chain(): readonly ChainLink[] {
    return (this.traced ??= criticalChain(this.layout, this.starts, this.ends, this.technicians, this.makespan));
  }

  private get technicians(): readonly (number | undefined)[] {
    return (this.assigned ??= assignTechnicians(this.layout, this.starts, this.ends));
  }
}
