import { compare, Tally, type Decimal } from '../vocabulary/index.js';
import { countBits } from './bits.js';

/** A job's way of being done: the ways in it takes (bits) and a price that is never above what it adds to a total. */
export interface WayMode {
  readonly takes: number;
  readonly price: Decimal;
  /** Decides between modes of one price. */
  readonly hours: Decimal;
}

/** The access problem of one option: which ways in to pay for, so that every job can be done and all is cheapest. */
export interface WaysProblem<P extends RankedPlan> {
  /** For each way in: the bits of all that it gives, its own among them. */
  readonly gives: readonly number[];
  /** For each way in: a price never above what it adds to a total. */
  readonly prices: readonly Decimal[];
  /** For each job its modes, cheapest first; a job without a mode that can be reached makes the problem unsolvable. */
  readonly jobs: readonly (readonly WayMode[])[];
  /** A sum that every plan contains, whatever its ways. */
  readonly base: Decimal;
  /** Ways in that every plan pays for, as bits. */
  readonly always?: number;
  /** Prices a set of ways exactly, fees and taxes included. Asked only for sets in which every job can be done. */
  readonly plan: (ways: number) => P;
}

export interface RankedPlan {
  readonly ways: number;
  readonly money: Decimal;
  readonly hours: Decimal;
}

/** The most ways in that one option may choose among. */
export const MOST_WAYS = 12;

/**
 * Finds the cheapest sets of ways in, best first, at most `most` of them: the facility-location problem with
 * inclusions, exactly, by branch and bound. Ties go to fewer hours, then to fewer ways, then to the earlier lines.
 * Sets that pay for a way no job takes are never returned: the same set without it is cheaper. What every plan pays for
 * is in all of them.
 *
 * The bound of a branch is what its paid ways cost, plus each job at its cheapest with every way that is still open.
 */
export function cheapestWays<P extends RankedPlan>(problem: WaysProblem<P>, most: number): P[] {
  const { gives, prices, jobs, always = 0 } = problem;
  const count = gives.length;
  const best: P[] = [];
  const cheapest = new Map<number, Decimal | undefined>();
  if (boundOf(0, 0, problem.base) !== undefined) branch(0, 0, problem.base);
  return best;

  /** All jobs, each at its cheapest with these ways open; undefined where one can't be done. */
  function allAtCheapest(open: number): Decimal | undefined {
    if (!cheapest.has(open)) cheapest.set(open, cheapestSum(jobs, open));
    return cheapest.get(open);
  }

  /** What is spent, and all jobs with every way in that is paid or still to be decided; undefined where one can't be done. */
  function boundOf(next: number, paid: number, spent: Decimal): Decimal | undefined {
    return allAtCheapest(given(paid) | given(((1 << count) - 1) & ~((1 << next) - 1)))?.plus(spent);
  }

  /** The branch that promises more goes first: what it finds often spares the other one. */
  function branch(next: number, paid: number, spent: Decimal): void {
    if (next === count) {
      if (everyWayIsTaken(paid)) keep(problem.plan(paid));
      return;
    }
    const here = { paid: paid | (1 << next), spent: spent.plus(prices[next] as Decimal) };
    const taken = { ...here, bound: boundOf(next + 1, here.paid, here.spent) };
    const left = (always & (1 << next)) === 0 ? { paid, spent, bound: boundOf(next + 1, paid, spent) } : undefined;
    const leftFirst = left?.bound !== undefined && taken.bound !== undefined && compare(left.bound, taken.bound) < 0;
    for (const one of leftFirst ? [left, taken] : [taken, left]) {
      if (one?.bound !== undefined && !isTooDear(one.bound)) branch(next + 1, one.paid, one.spent);
    }
  }

  function isTooDear(bound: Decimal): boolean {
    const worst = best.length < most ? undefined : best[best.length - 1];
    return worst !== undefined && compare(bound, worst.money) > 0;
  }

  /** All that a set of paid ways gives. */
  function given(paid: number): number {
    let bits = 0;
    for (let i = 0; i < count; i++) if ((paid & (1 << i)) !== 0) bits |= gives[i] as number;
    return bits;
  }

  function everyWayIsTaken(paid: number): boolean {
    for (let i = 0; i < count; i++) {
      const bit = 1 << i;
      if ((paid & ~always & bit) === 0) continue;
      const without = given(paid & ~bit);
      const all = given(paid);
      const changes = jobs.some((modes) => {
        const left = cheapestMode(modes, without);
        const now = cheapestMode(modes, all);
        return now !== undefined && now !== left && (left === undefined || byCost(now, left) < 0);
      });
      if (!changes) return false;
    }
    return true;
  }

  function keep(plan: P): void {
    const at = best.findIndex((other) => before(plan, other));
    if (at < 0) best.push(plan);
    else best.splice(at, 0, plan);
    if (best.length > most) best.pop();
  }
}

function cheapestSum(jobs: WaysProblem<never>['jobs'], open: number): Decimal | undefined {
  const sum = new Tally();
  for (const modes of jobs) {
    const cheapest = cheapestMode(modes, open);
    if (cheapest === undefined) return undefined;
    sum.add(cheapest.price);
  }
  return sum.total();
}

/** The modes of a job, the one that costs least first; of equals the quicker, then the one that is written first. */
export function cheapestFirst<M extends WayMode>(modes: readonly M[]): readonly M[] {
  return modes.length < 2 ? modes : modes.toSorted(byCost);
}

/** The mode that costs least with these ways in open, of modes that stand cheapest first. */
export function cheapestMode<M extends WayMode>(modes: readonly M[], given: number): M | undefined {
  for (const mode of modes) if ((mode.takes & ~given) === 0) return mode;
  return undefined;
}

/** Of two that cost the same the quicker goes first: a way in that only saves hours is taken too, where it costs nothing more. */
function byCost(a: WayMode, b: WayMode): number {
  return compare(a.price, b.price) || compare(a.hours, b.hours);
}

/** Whether one plan is to be preferred to another. */
export function before(a: RankedPlan, b: RankedPlan): boolean {
  const order = compare(a.money, b.money) || compare(a.hours, b.hours) || countBits(a.ways) - countBits(b.ways) || a.ways - b.ways;
  return order < 0;
}
