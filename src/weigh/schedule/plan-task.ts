import { isDuration } from './duration.js';
import { successorsOf, topologicalOrder } from './topological.js';

/** A piece of the way to a running car: work that holds one technician, or a wait that holds nobody. */
export interface PlanTask {
  readonly id: string;
  /** Indexes of the tasks that must have ended before; twice the same is once. */
  readonly after: readonly number[];
  /** Work is done by one technician without interruption. Work of no length needs nobody. */
  readonly kind: 'work' | 'wait';
  /** In hours of working time or any other unit that all tasks share: nights do not exist on this axis. */
  readonly duration: number;
  /**
   * For a wait by the calendar: when it ends if it starts then, given its duration. A later start must never give an
   * earlier end. An end before the start is taken to be the start. Work does not have one.
   */
  readonly endsAt?: (start: number, duration: number) => number;
  /** False for what may go on after the finish; it then never delays a task that counts. A task that a counting one waits for counts. */
  readonly counts?: boolean;
}

/** Why tasks have no plan: the first fault found. */
export type PlanProblem =
  /** Technicians are counted in whole numbers from one; Infinity stands for as many as can be used. */
  | { readonly kind: 'no-technician' }
  | { readonly kind: 'unknown-predecessor'; readonly id: string; readonly predecessor: number }
  | { readonly kind: 'no-duration'; readonly id: string }
  /** Each waits for the one before it, and the first for the last. */
  | { readonly kind: 'circle'; readonly ids: readonly string[] };

/** Tasks laid out in arrays, for the loops that run often. */
export interface Layout {
  readonly kind: 'laid-out';
  readonly count: number;
  readonly technicians: number;
  readonly durations: Float64Array;
  readonly isWork: Uint8Array;
  readonly isCounted: Uint8Array;
  readonly endsAt: readonly PlanTask['endsAt'][];
  /** The predecessors of task i are `before` from `beforeFrom[i]` up to `beforeFrom[i + 1]`. */
  readonly beforeFrom: Int32Array;
  readonly before: Int32Array;
  readonly successors: readonly (readonly number[])[];
  /** Of the successors those that count like the task itself: what does not count has no say in the order of what does. */
  readonly ranked: readonly (readonly number[])[];
  /** Predecessors first. */
  readonly topological: Int32Array;
}

export function layOut(tasks: readonly PlanTask[], technicians: number): Layout | PlanProblem {
  if (!(technicians >= 1) || (technicians !== Infinity && !Number.isInteger(technicians))) return { kind: 'no-technician' };
  const after: number[][] = [];
  for (const { id, after: written, duration } of tasks) {
    const unknown = written.find((one) => tasks[one] === undefined);
    if (unknown !== undefined) return { kind: 'unknown-predecessor', id, predecessor: unknown };
    if (!isDuration(duration)) return { kind: 'no-duration', id };
    after.push([...new Set(written)]);
  }
  const ordering = topologicalOrder(after);
  if (ordering.kind === 'circle') return { kind: 'circle', ids: ordering.circle.map((i) => (tasks[i] as PlanTask).id) };
  const beforeFrom = new Int32Array(tasks.length + 1);
  after.forEach((before, i) => (beforeFrom[i + 1] = (beforeFrom[i] as number) + before.length));
  const isCounted = Uint8Array.from(tasks, ({ counts }) => (counts === false ? 0 : 1));
  for (const i of ordering.order.toReversed()) {
    if (isCounted[i] === 1) for (const before of after[i] as number[]) isCounted[before] = 1;
  }
  const successors = successorsOf(after);
  return {
    kind: 'laid-out', count: tasks.length, technicians, isCounted, beforeFrom,
    durations: Float64Array.from(tasks, ({ duration }) => duration),
    isWork: Uint8Array.from(tasks, ({ kind }) => (kind === 'work' ? 1 : 0)),
    endsAt: tasks.map(({ kind, endsAt }) => (kind === 'wait' ? endsAt : undefined)),
    before: Int32Array.from(after.flat()),
    successors,
    ranked: successors.map((next, i) => next.filter((one) => isCounted[one] === isCounted[i])),
    topological: ordering.order,
  };
}

/** When a task that holds nobody ends. Not-a-number durations and ends count as nothing. */
export function waitEnd(endsAt: PlanTask['endsAt'], start: number, duration: number): number {
  const end = endsAt === undefined ? start + duration : endsAt(start, duration);
  return end > start ? end : start;
}
