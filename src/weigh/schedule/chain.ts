import type { Layout } from './plan-task.js';

/** A task on the critical chain of a plan. */
export interface ChainLink {
  readonly task: number;
  /**
   * Why it starts no earlier: it stands at the start, it comes after the one before it in the chain, or that one keeps
   * the technician. Both at once counts as coming after.
   */
  readonly waitsFor: 'start' | 'after' | 'technician';
}

/**
 * Which technician does each piece of work, the lowest that is free; undefined for all that holds nobody.
 *
 * @param starts, ends of a plan with at most `technicians` at work at once.
 */
export function assignTechnicians({ count, isWork, durations }: Layout, starts: Float64Array, ends: Float64Array): (number | undefined)[] {
  const work = [...Array(count).keys()].filter((i) => isWork[i] === 1 && (durations[i] as number) > 0);
  work.sort((a, b) => (starts[a] as number) - (starts[b] as number) || (ends[a] as number) - (ends[b] as number) || a - b);
  const freeFrom: number[] = [];
  const technicians: (number | undefined)[] = Array.from({ length: count });
  for (const i of work) {
    const free = freeFrom.findIndex((from) => from <= (starts[i] as number));
    const technician = free < 0 ? freeFrom.length : free;
    technicians[i] = technician;
    freeFrom[technician] = ends[i] as number;
  }
  return technicians;
}

/**
 * Traces a plan of serial generation back from its finish: a chain of tasks without idle time between. Each starts at
 * the very moment at which the one before it ends, which is exact, since serial generation copies such moments.
 */
export function criticalChain({ count, isCounted, before, beforeFrom }: Layout, starts: Float64Array, ends: Float64Array, technicians: readonly (number | undefined)[], makespan: number): ChainLink[] {
  const chain: ChainLink[] = [];
  let here = [...Array(count).keys()].find((i) => isCounted[i] === 1 && ends[i] === makespan);
  while (here !== undefined) {
    const start = starts[here] as number;
    const endsThen = (i: number): boolean => ends[i] === start;
    const predecessor = [...before.subarray(beforeFrom[here], beforeFrom[here + 1])].find(endsThen);
    const task = here;
    const technician = technicians[task];
    const byTechnician = technician === undefined ? -1 : technicians.findIndex((one, i) => one === technician && endsThen(i) && (starts[i] as number) < start);
    if (predecessor !== undefined) {
      chain.push({ task, waitsFor: 'after' });
      here = predecessor;
    } else if (start > 0 && byTechnician >= 0) {
      chain.push({ task, waitsFor: 'technician' });
      here = byTechnician;
    } else {
      chain.push({ task, waitsFor: 'start' });
      here = undefined;
    }
  }
  return chain.reverse();
}
