import { certain, checkChance, checkPoints, type Curve, type ThreePoints } from './curve.js';

/**
 * The triangular distribution: the density rises straight from low to likely and falls straight to high. Any two or
 * all three points may be equal. Throws a RangeError where they are out of order.
 *
 * Source: Evans, Hastings & Peacock, Statistical Distributions, "Triangular".
 */
export function triangular(points: ThreePoints): Curve {
  checkPoints(points);
  const { low, likely, high } = points;
  const range = high - low;
  if (range === 0) return certain(likely);
  const rise = (likely - low) / range;
  const variance = (range * range * (1 - rise * (1 - rise))) / 18;
  return { low, high, mean: low + (range + (likely - low)) / 3, variance, cdf, quantile, strata };

  function cdf(x: number): number {
    if (x <= low) return 0;
    if (x >= high) return 1;
    const at = (x - low) / range;
    return at < rise ? (at * at) / rise : 1 - ((1 - at) * (1 - at)) / (1 - rise);
  }

  function quantile(p: number): number {
    checkChance(p);
    if (p === 0) return low;
    // Rounding of low + range must not lead out of the range.
    return p < rise ? Math.min(high, low + range * Math.sqrt(p * rise)) : Math.max(low, high - range * Math.sqrt((1 - p) * (1 - rise)));
  }

  function strata(cases: number): Float64Array {
    const all = new Float64Array(cases);
    for (let i = 0; i < cases; i++) all[i] = quantile((i + 0.5) / cases);
    return all;
  }
}
