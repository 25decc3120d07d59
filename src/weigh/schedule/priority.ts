import type { PrecedenceTimes } from './bounds.js';
import type { Layout } from './plan-task.js';
import { SmallestFirst } from './smallest-first.js';

/** A priority rule: a key for each task, of which the smaller goes first. */
export type PriorityRule = (layout: Layout, times: PrecedenceTimes) => Float64Array;

/** The earliest late finish first: the best single rule on average (Kolisch 1996, from memory). */
export const latestFinish: PriorityRule = (_, { lateEnd }) => lateEnd;

/** Standard rules of project scheduling; the first is tried first and wins where it is no worse than another. */
export const PRIORITY_RULES: readonly PriorityRule[] = [
  latestFinish,
  function latestStart(_, { lateStart }) { return lateStart; },
  function leastSlack(_, { lateStart, earlyStart }) { return lateStart.map((late, i) => late - (earlyStart[i] as number)); },
  function mostSuccessors({ ranked, topological, count }) {
    const reached = Array.from({ length: count }, () => new Set<number>());
    for (const i of topological.toReversed()) {
      const mine = reached[i] as Set<number>;
      for (const next of ranked[i] as readonly number[]) {
        mine.add(next);
        for (const later of reached[next] as Set<number>) mine.add(later);
      }
    }
    return Float64Array.from(reached, (set) => -set.size);
  },
  function greatestRankWeight({ durations, ranked }) {
    return durations.map((duration, i) => -(ranked[i] as readonly number[]).reduce((sum, next) => sum + (durations[next] as number), duration));
  },
  function longestFirst({ durations }) { return durations.map((duration) => -duration); },
];

/** All tasks in an order with predecessors first, those that count before the others, and otherwise by key, then by the table. */
export function listByPriority(layout: Layout, keys: Float64Array): Int32Array {
  return predecessorsFirst(layout, rankedByKey(layout, keys));
}

/**
 * All tasks by key, then by the table; those that count before the others.
 *
 * @param near every task once, nearly in that order: the nearer, the sooner it is found. It changes nothing of what is found.
 */
export function rankedByKey({ count, isCounted }: Layout, keys: Float64Array, near?: Int32Array): Int32Array {
  const order = (a: number, b: number) => (isCounted[b] as number) - (isCounted[a] as number) || compare(keys[a] as number, keys[b] as number) || a - b;
  return (near === undefined ? undefined : moved(near, order)) ?? Int32Array.from({ length: count }, (_, i) => i).sort(order);
}

/** Past so many steps for each task, the list was not near. */
const MOST_STEPS = 8;

/** Moves each task of a list ahead of those that it goes before; undefined where that takes too many steps. */
function moved(near: Int32Array, order: (a: number, b: number) => number): Int32Array | undefined {
  const list = near.slice();
  let left = MOST_STEPS * list.length;
  for (let from = 1; from < list.length; from++) {
    const task = list[from] as number;
    let at = from;
    for (; at > 0 && order(list[at - 1] as number, task) > 0; at--) {
      if (left-- === 0) return undefined;
      list[at] = list[at - 1] as number;
    }
    list[at] = task;
  }
  return list;
}

/** The tasks in the order of a ranking, but that a task waits for its predecessors. */
export function predecessorsFirst(layout: Layout, ranked: Int32Array): Int32Array {
  const rank = new Int32Array(layout.count);
  ranked.forEach((task, at) => (rank[task] = at));
  return waitsAreBefore(layout, rank) ? ranked : firstThatMay(layout, ranked, rank);
}

function waitsAreBefore({ count, before, beforeFrom }: Layout, rank: Int32Array): boolean {
  for (let i = 0; i < count; i++) {
    for (let k = beforeFrom[i] as number; k < (beforeFrom[i + 1] as number); k++) if ((rank[before[k] as number] as number) > (rank[i] as number)) return false;
  }
  return true;
}

/** Takes again and again the first of the list that waits for nothing that isn't taken yet. */
function firstThatMay({ count, beforeFrom, successors }: Layout, ranked: Int32Array, rank: Int32Array): Int32Array {
  const missing = new Int32Array(count);
  const open = new SmallestFirst(count);
  for (let at = 0; at < count; at++) {
    const i = ranked[at] as number;
    missing[i] = (beforeFrom[i + 1] as number) - (beforeFrom[i] as number);
    if (missing[i] === 0) open.put(at);
  }
  const order = new Int32Array(count);
  for (let at = 0; at < count; at++) {
    const next = ranked[open.take()] as number;
    order[at] = next;
    for (const one of successors[next] as readonly number[]) if (--(missing[one] as number) === 0) open.put(rank[one] as number);
  }
  return order;
}

/** Infinite keys too. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
