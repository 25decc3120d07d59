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

/**
 * All tasks in an order with predecessors first, those that count before the others, and otherwise by key, then by the table.
 *
 * @param near every task once, nearly in that order: the nearer, the sooner it is found. It changes nothing of what is found.
 */
export function listByPriority(layout: Layout, keys: Float64Array, near?: readonly number[]): Int32Array {
  const { count, isCounted } = layout;
  // A list, and no typed array: the sort of a list is quick with what is nearly in order.
  const byRank = (near === undefined ? Array.from({ length: count }, (_, i) => i) : [...near]).sort((a, b) => (isCounted[b] as number) - (isCounted[a] as number) || compare(keys[a] as number, keys[b] as number) || a - b);
  const rank = new Int32Array(count);
  for (let at = 0; at < count; at++) rank[byRank[at] as number] = at;
  return waitsAreBefore(layout, rank) ? new Int32Array(byRank) : firstThatMay(layout, byRank, rank);
}

function waitsAreBefore({ count, before, beforeFrom }: Layout, rank: Int32Array): boolean {
  for (let i = 0; i < count; i++) {
    for (let k = beforeFrom[i] as number; k < (beforeFrom[i + 1] as number); k++) if ((rank[before[k] as number] as number) > (rank[i] as number)) return false;
  }
  return true;
}

/** Takes again and again the first of the list that waits for nothing that isn't taken yet. */
function firstThatMay({ count, beforeFrom, successors }: Layout, byRank: readonly number[], rank: Int32Array): Int32Array {
  const missing = new Int32Array(count);
  const open = new SmallestFirst(count);
  for (let at = 0; at < count; at++) {
    const i = byRank[at] as number;
    missing[i] = (beforeFrom[i + 1] as number) - (beforeFrom[i] as number);
    if (missing[i] === 0) open.put(at);
  }
  const order = new Int32Array(count);
  for (let at = 0; at < count; at++) {
    const next = byRank[open.take()] as number;
    order[at] = next;
    for (const one of successors[next] as readonly number[]) if (--(missing[one] as number) === 0) open.put(rank[one] as number);
  }
  return order;
}

/** Infinite keys too. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
