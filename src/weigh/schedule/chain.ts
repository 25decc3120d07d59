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
 * Which technician does each piece of work: one who has just done what it comes after, or else the lowest that is
 * free; undefined for all that holds nobody. So nobody waits for another's piece where that can be helped.
 *
 * @param starts, ends of a plan with at most `technicians` at work at once.
 */
export function assignTechnicians({ count, isWork, durations, before, beforeFrom }: Layout, starts: Float64Array, ends: Float64Array): (number | undefined)[] {
  const work = [...Array(count).keys()].filter((i) => isWork[i] === 1 && (durations[i] as number) > 0);
  work.sort((a, b) => (starts[a] as number) - (starts[b] as number) || (ends[a] as number) - (ends[b] as number));
  const freeFrom: number[] = [];
  const lastPiece: number[] = [];
  const technicians: (number | undefined)[] = Array.from({ length: count });
  for (const i of work) {
    const start = starts[i] as number;
    const earlier = before.subarray(beforeFrom[i], beforeFrom[i + 1]);
    const goesOn = freeFrom.findIndex((from, k) => from <= start && earlier.includes(lastPiece[k] as number));
    const free = goesOn < 0 ? freeFrom.findIndex((from) => from <= start) : goesOn;
    const technician = free < 0 ? freeFrom.length : free;
    technicians[i] = technician;
    freeFrom[technician] = ends[i] as number;
    lastPiece[technician] = i;
  }
  return technicians;
}

/**
 * Traces a plan of serial generation back from its finish: a chain of tasks without idle time between. Each starts at
 * the very moment at which the one before it ends, which is exact, since serial generation copies such moments.
 */
export function criticalChain({ count, isCounted, before, beforeFrom }: Layout, starts: Float64Array, ends: Float64Array, technicians: readonly (number | undefined)[], makespan: number): ChainLink[] {
  const chain: ChainLink[] = [];
  const pieces = piecesByEnd(starts, ends, technicians);
  let here = [...Array(count).keys()].find((i) => isCounted[i] === 1 && ends[i] === makespan);
  while (here !== undefined) {
    const task = here;
    const start = starts[task] as number;
    const predecessor = [...before.subarray(beforeFrom[task], beforeFrom[task + 1])].find((i) => ends[i] === start);
    // What holds nobody finds nobody's piece, and no piece ends at the start.
    const byTechnician = predecessor === undefined ? pieces.get(start)?.find((i) => technicians[i] === technicians[task]) : undefined;
    chain.push({ task, waitsFor: predecessor !== undefined ? 'after' : byTechnician !== undefined ? 'technician' : 'start' });
    here = predecessor ?? byTechnician;
  }
  return chain.reverse();
}

/** What technicians did, by the moment at which it ended, lowest number first. One that ends when it starts, since it is so short beside its start, is left out: nobody waits for it. */
function piecesByEnd(starts: Float64Array, ends: Float64Array, technicians: readonly (number | undefined)[]): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>();
  technicians.forEach((technician, i) => {
    const end = ends[i] as number;
    if (technician === undefined || !((starts[i] as number) < end)) return;
    const others = found.get(end);
    if (others === undefined) found.set(end, [i]);
    else others.push(i);
  });
  return found;
}
