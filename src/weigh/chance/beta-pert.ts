import { betaStrata } from './beta-strata.js';
import { type Beta, betaOf } from './beta.js';
import { certain, checkChance, checkPoints, type Curve, type ThreePoints } from './curve.js';

/** A beta-PERT distribution: a beta distribution that is stretched over low to high. */
export interface BetaPert extends Curve {
  readonly alpha: number;
  readonly beta: number;
}

/**
 * The beta-PERT distribution with the usual weight of 4 on the likely point: alpha = 1 + 4 (likely - low)/range,
 * beta = 1 + 4 (high - likely)/range. Any two or all three points may be equal (where all are, alpha and beta are
 * 3, and nothing is spread). Throws a RangeError where they are out of order.
 *
 * Its mean is (low + 4 likely + high)/6. Its variance is (mean - low)(high - mean)/7: not the (range/6)² of the
 * network method, a rule of thumb that lies from 22 % below it (likely point in the middle) to 40 % above (at an end).
 *
 * Source: D. Vose, Risk Analysis, "PERT distribution"; the three-point rule is Malcolm, Roseboom, Clark & Fazar,
 * Operations Research 7(5), 1959.
 */
export function betaPert(points: ThreePoints): BetaPert {
  checkPoints(points);
  const { low, likely, high } = points;
  const range = high - low;
  if (range === 0) return { ...certain(likely), alpha: 3, beta: 3 };
  const alpha = 1 + (4 * (likely - low)) / range;
  const beta = 6 - alpha;
  const mean = low + (4 * (likely - low) + range) / 6;
  let kept: Beta | undefined;
  const shape = () => (kept ??= betaOf(alpha, beta));
  return {
    low, high, alpha, beta, mean,
    variance: ((mean - low) * (high - mean)) / 7,
    cdf: (x) => shape().cdf((x - low) / range),
    quantile: (p) => (checkChance(p), p === 1 ? high : Math.min(high, low + range * shape().quantile(p))),
    strata: (cases) => {
      const standard = betaStrata(alpha, beta, cases);
      const all = new Float64Array(cases);
      for (let i = 0; i < cases; i++) all[i] = Math.min(high, low + range * (standard[i] as number));
      return all;
    },
  };
}
