import type { Curve, ThreePoints } from '../../../src/weigh/chance/index.js';

/**
 * The triangular distribution as a curve: what is drawn from one that is known in closed form is held against it.
 * Points in order, low below high.
 *
 * Source: Evans, Hastings & Peacock, Statistical Distributions, "Triangular".
 */
export function triangular({ low, likely, high }: ThreePoints): Curve {
  const range = high - low;
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
    return p < rise ? low + range * Math.sqrt(p * rise) : high - range * Math.sqrt((1 - p) * (1 - rise));
  }

  function strata(cases: number): Float64Array {
    return Float64Array.from({ length: cases }, (_, i) => quantile((i + 0.5) / cases));
  }
}
