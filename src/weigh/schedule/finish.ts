import { normalQuantile } from '../chance/normal.js';
import type { Activity, NetworkPlan } from './network.js';
import { pertVariance } from './three-point.js';

/** When a network finishes, as a normal distribution: mean in the unit of the durations, variance in its square. */
export interface FinishEstimate {
  readonly mean: number;
  readonly variance: number;
}

/**
 * The finish along the critical path: its length, and the sum of its variances; of several critical paths the one
 * with the largest variance, whether it is listed or not. Source: Malcolm, Roseboom, Clark & Fazar, Operations
 * Research 7(5), 1959. It takes the activities to be independent and the critical path to stay critical, and so is
 * too early on average where another path comes close.
 *
 * @param activities the table that `plan` was made from by their three-point means.
 */
export function estimateFinish(activities: readonly Activity[], plan: NetworkPlan): FinishEstimate {
  const variances = new Float64Array(activities.length);
  let variance = 0;
  for (const i of plan.order) {
    if (!(plan.activities[i] as { readonly critical: boolean }).critical) continue;
    let before = 0;
    for (const one of plan.criticalLinks[i] as readonly number[]) before = Math.max(before, variances[one] as number);
    variances[i] = before + pertVariance((activities[i] as Activity).duration);
    variance = Math.max(variance, variances[i]);
  }
  return { mean: plan.finish, variance };
}

/** The moment by which the network has finished with a chance strictly between 0 and 1. */
export function finishWithChance({ mean, variance }: FinishEstimate, chance: number): number {
  return variance === 0 ? mean : mean + normalQuantile(chance) * Math.sqrt(variance);
}
