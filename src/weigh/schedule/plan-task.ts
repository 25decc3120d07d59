import { isDuration } from './duration.js';
import { onceEach } from './once-each.js';
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
  readonly endsAt?: ((start: number, duration: number) => number) | undefined;
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

/** @param technicians at least 1, or Infinity. */
export function layOut(tasks: readonly PlanTask[], technicians: number): Layout | PlanProblem {
  if (!(technicians >= 1) || (technicians !== Infinity && !Number.isInteger(technicians))) return { kind: 'no-technician' };
  const count = tasks.length;
  const after: (readonly number[])[] = [];
  const durations = new Float64Array(count);
  const isWork = new Uint8Array(count);
  const isCounted = new Uint8Array(count);
  const endsAt: PlanTask['endsAt'][] = [];
  for (const [i, { id, after: written, kind, duration, counts, endsAt: ends }] of tasks.entries()) {
    const unknown = written.find((one) => tasks[one] === undefined);
    if (unknown !== undefined) return { kind: 'unknown-predecessor', id, predecessor: unknown };
    if (!isDuration(duration)) return { kind: 'no-duration', id };
    after.push(onceEach(written));
    durations[i] = duration;
    isWork[i] = kind === 'work' ? 1 : 0;
    isCounted[i] = counts === false ? 0 : 1;
    endsAt.push(kind === 'wait' ? ends : undefined);
  }
  const successors = successorsOf(after);
  const ordering = topologicalOrder(after, successors);
  if (ordering.kind === 'circle') return { kind: 'circle', ids: ordering.circle.map((i) => (tasks[i] as PlanTask).id) };
  const topological = ordering.order;
  for (let at = count - 1; at >= 0; at--) {
    const i = topological[at] as number;
    if (isCounted[i] === 1) for (const before of after[i] as readonly number[]) isCounted[before] = 1;
  }
  const ranked = isCounted.includes(0) ? successors.map((next, i) => next.filter((one) => isCounted[one] === isCounted[i])) : successors;
  return { kind: 'laid-out', count, technicians, durations, isWork, isCounted, endsAt, ...inOneList(after), successors, ranked, topological };
}

/** The same tasks with other durations at some places: what waits for what is not looked at again. Undefined where one is no duration. */
export function withDurations(layout: Layout, others: readonly { readonly place: number; readonly duration: number }[]): Layout | undefined {
  const durations = layout.durations.slice();
  for (const { place, duration } of others) {
    if (!isDuration(duration)) return undefined;
    durations[place] = duration;
  }
  return { ...layout, durations };
}

function inOneList(lists: readonly (readonly number[])[]): Pick<Layout, 'before' | 'beforeFrom'> {
  const beforeFrom = new Int32Array(lists.length + 1);
  lists.forEach((list, i) => (beforeFrom[i + 1] = (beforeFrom[i] as number) + list.length));
  const before = new Int32Array(beforeFrom[lists.length] as number);
  lists.forEach((list, i) => before.set(list, beforeFrom[i]));
  return { before, beforeFrom };
}

/** When a task that holds nobody ends. Not-a-number durations and ends count as nothing. */
export function waitEnd(endsAt: PlanTask['endsAt'], start: number, duration: number): number {
  const end = endsAt === undefined ? start + duration : endsAt(start, duration);
  return end > start ? end : start;
}
