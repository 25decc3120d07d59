import type { PrecedenceTimes } from './bounds.js';
import { TOLERANCE } from './duration.js';
import { waitEnd, type Layout } from './plan-task.js';
import { Usage } from './usage.js';

/** How many partial lists are looked at before the search gives up its proof. */
const MOST_NODES = 20_000;

/** With more pieces of work than this no search is begun: it would hardly ever end. */
export const MOST_WORK = 24;

export interface SearchResult {
  /** The best list found, of the tasks that count; undefined where nothing better than the given one was. */
  readonly list: readonly number[] | undefined;
  /** True where every list was looked at or shown to be no better: the best finish is then the least possible. */
  readonly complete: boolean;
  readonly nodes: number;
}

/**
 * Looks for a list whose plan finishes before `best`, by branch and bound over activity lists. Serial generation over
 * all lists with predecessors first contains a plan of least finish (Sprecher, Kolisch & Drexl, European Journal of
 * Operational Research 80, 1995; Kolisch, the same 90, 1996; from memory), and lists in the order of starts suffice:
 * taken in that order, each plan that serial generation makes gives itself again. Waits start as soon as they can.
 *
 * A branch is cut off by precedence with the technicians as they are booked, and by the free time that the work still
 * to be placed needs, with the waits after it.
 *
 * @param rank for each task its place in a good list: earlier ones are tried first.
 * @param floor a finish that nothing can beat: the search ends where it is reached.
 */
export function searchLists(layout: Layout, times: PrecedenceTimes, rank: Int32Array, best: number, floor: number): SearchResult {
  const { count, before, beforeFrom, successors, isCounted, isWork, durations, endsAt, technicians } = layout;
  const topological = layout.topological.filter((i) => isCounted[i] === 1);
  const holdsOne = (i: number): boolean => isWork[i] === 1 && (durations[i] as number) > 0;
  const work = [...topological].filter(holdsOne).sort((a, b) => (rank[a] as number) - (rank[b] as number));
  const byTail = [...work].sort((a, b) => (times.tail[b] as number) - (times.tail[a] as number));
  if (work.length > MOST_WORK) return { list: undefined, complete: false, nodes: 0 };

  const usages = Array.from({ length: work.length + 1 }, () => new Usage(technicians, work.length));
  const ends = new Float64Array(count);
  const isPlaced = new Uint8Array(count);
  const missing = Int32Array.from({ length: count }, (_, i) => (beforeFrom[i + 1] as number) - (beforeFrom[i] as number));
  const trail: number[] = [];
  // Where each task would begin and end in the node at hand, by its depth: precedence and bookings only.
  const starts = Array.from({ length: work.length + 1 }, () => new Float64Array(count));
  let nodes = 0;
  let list: readonly number[] | undefined;

  for (const i of topological) if (missing[i] === 0 && isPlaced[i] === 0 && !holdsOne(i)) place(i, waitEnd(endsAt[i], 0, durations[i] as number));
  const complete = branch(0, 0, -1);
  return { list, complete, nodes };

  /** Looks at all lists that begin with the trail; false where the search was given up. */
  function branch(depth: number, lastStart: number, last: number): boolean {
    if (nodes === MOST_NODES) return false;
    nodes++;
    const usage = usages[depth] as Usage;
    const start = starts[depth] as Float64Array;
    const least = bound(usage, start, lastStart);
    if (least >= best - TOLERANCE * best) return true;
    if (depth === work.length) {
      best = least;
      list = [...trail];
      return true;
    }
    for (const i of work) {
      if (isPlaced[i] === 1 || missing[i] !== 0) continue;
      const at = start[i] as number;
      // Of two that start together the earlier of the table goes first.
      if (at === lastStart && i < last) continue;
      const next = usages[depth + 1] as Usage;
      next.copy(usage);
      next.occupy(at, at + (durations[i] as number));
      const mark = trail.length;
      place(i, at + (durations[i] as number));
      const finished = branch(depth + 1, at, i);
      takeBack(mark);
      if (!finished) return false;
      if (best - floor <= TOLERANCE * best) return true;
    }
    return true;
  }

  /** The least finish of all lists that begin with the trail; Infinity where none of them is in the order of starts. */
  function bound(usage: Usage, start: Float64Array, lastStart: number): number {
    let least = 0;
    for (let at = 0; at < topological.length; at++) {
      const i = topological[at] as number;
      if (isPlaced[i] === 0) {
        let ready = 0;
        for (let k = beforeFrom[i] as number; k < (beforeFrom[i + 1] as number); k++) ready = Math.max(ready, ends[before[k] as number] as number);
        const duration = durations[i] as number;
        if (holdsOne(i)) {
          ready = usage.earliest(ready, duration);
          if (ready < lastStart && missing[i] === 0) return Infinity;
        }
        start[i] = ready;
        ends[i] = waitEnd(endsAt[i], ready, duration);
      }
      least = Math.max(least, ends[i] as number);
    }
    if (technicians === Infinity) return least;
    let from = Infinity;
    let sum = 0;
    for (let at = 0; at < byTail.length; at++) {
      const i = byTail[at] as number;
      if (isPlaced[i] === 1) continue;
      from = Math.min(from, start[i] as number);
      sum += durations[i] as number;
      least = Math.max(least, usage.fitted(from, sum) + (times.tail[i] as number));
    }
    return least;
  }

  /** Places a task, and all waits that it lets begin. */
  function place(i: number, end: number): void {
    isPlaced[i] = 1;
    ends[i] = end;
    trail.push(i);
    for (const next of successors[i] as readonly number[]) {
      if (--(missing[next] as number) !== 0 || isCounted[next] === 0 || holdsOne(next)) continue;
      let ready = 0;
      for (let k = beforeFrom[next] as number; k < (beforeFrom[next + 1] as number); k++) ready = Math.max(ready, ends[before[k] as number] as number);
      place(next, waitEnd(endsAt[next], ready, durations[next] as number));
    }
  }

  function takeBack(mark: number): void {
    while (trail.length > mark) {
      const i = trail.pop() as number;
      isPlaced[i] = 0;
      for (const next of successors[i] as readonly number[]) (missing[next] as number)++;
    }
  }
}

/** Moments from which on it is asked how much work is left; of more, every second, third and so on: the bound holds, and is looser. */
const MOST_HEADS = 400;

/** What no plan can finish before: the critical path, and the work that has to fit between waits before and after it. */
export function leastFinish({ count, isCounted, isWork, durations, technicians }: Layout, { earlyStart, tail, length }: PrecedenceTimes): number {
  const byTail: number[] = [];
  for (let i = 0; i < count; i++) if (isCounted[i] === 1 && isWork[i] === 1) byTail.push(i);
  let least = length;
  const heads = [...new Set(byTail.map((i) => earlyStart[i] as number))];
  byTail.sort((a, b) => (tail[b] as number) - (tail[a] as number));
  const apart = Math.ceil(heads.length / MOST_HEADS);
  for (const head of heads.filter((_, i) => i % apart === 0)) {
    let sum = 0;
    for (const i of byTail) {
      if ((earlyStart[i] as number) < head) continue;
      sum += durations[i] as number;
      least = Math.max(least, head + sum / technicians + (tail[i] as number));
    }
  }
  return least;
}
