/**
 * The value that a share `p` of what the sample stands for does not exceed: between the values next to
 * (n + 1/3) p + 1/3, in proportion; at the ends the least or the greatest. Its median is unbiased whatever the shape,
 * which is why its source recommends it. `sorted` rises and holds at least one value.
 *
 * Source: definition 8 of Hyndman & Fan, "Sample quantiles in statistical packages", American Statistician 50, 1996.
 */
export function quantile(sorted: Float64Array, p: number): number {
  const last = sorted.length - 1;
  const at = Math.min(last, Math.max(0, (sorted.length + 1 / 3) * p - 2 / 3));
  const below = Math.floor(at);
  const low = sorted[below] as number;
  return below === last ? low : low + (at - below) * ((sorted[below + 1] as number) - low);
}

/** The middle value, or the mean of the two in the middle. */
export function median(sorted: Float64Array): number {
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[half] as number) : ((sorted[half - 1] as number) + (sorted[half] as number)) / 2;
}

/** A middle, and the median of the distances from it. */
export interface Middle {
  readonly middle: number;
  readonly spread: number;
}

/**
 * The median, and the median absolute deviation from it, not scaled.
 *
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.6, Measures of Scale.
 */
export function middleOf(values: readonly number[]): Middle {
  const middle = median(Float64Array.from(values).sort());
  return { middle, spread: median(Float64Array.from(values, (value) => Math.abs(value - middle)).sort()) };
}

/** Makes the median absolute deviation of a normal sample its standard deviation. */
const NORMAL = 0.6745;
/** The distance beyond which a value is far off. */
const FAR = 3.5;

/**
 * Whether a value lies far off the others: its modified z-score is over 3.5. Where more than half of all are equal the
 * spread is 0, and nothing is said of any.
 *
 * Source: Iglewicz & Hoaglin, How to Detect and Handle Outliers, 1993, as in NIST/SEMATECH e-Handbook, 1.3.5.17.
 */
export function isFarOff(value: number, { middle, spread }: Middle): boolean {
  return spread > 0 && (NORMAL * Math.abs(value - middle)) / spread > FAR;
}
