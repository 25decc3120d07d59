import { normalCdf } from '../chance/index.js';
import { median } from './spread.js';

export interface Trend {
  /** The middle of the slopes of all pairs, in values for one unit of time. */
  readonly slope: number;
  /** Pairs that rise less pairs that fall. */
  readonly score: number;
  /** Of the score, where there is no trend. */
  readonly variance: number;
  /** How often pure chance would give as clear a trend, either way. */
  readonly byChance: number;
}

/**
 * How values move with time; undefined where no two times differ. Works through every pair.
 *
 * Sources: slope: Theil, Proc. Kon. Ned. Akad. Wetensch. A 53, 1950, and Sen, Journal of the American Statistical
 * Association 63, 1968. Test: Mann, Econometrica 13, 1945, and Kendall, Rank Correlation Methods, 1970: the normal
 * approximation, with his variance for ties in both and a continuity correction; good from some ten values on.
 */
export function trendOf(times: ArrayLike<number>, values: ArrayLike<number>): Trend | undefined {
  const count = times.length;
  const slopes = new Float64Array((count * (count - 1)) / 2);
  let filled = 0;
  let score = 0;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      const time = (times[j] as number) - (times[i] as number);
      if (time === 0) continue;
      const rise = (values[j] as number) - (values[i] as number);
      slopes[filled++] = rise / time;
      score += Math.sign(rise) * Math.sign(time);
    }
  }
  if (filled === 0) return undefined;
  const variance = varianceOf(times, values);
  const apart = Math.max(0, Math.abs(score) - 1);
  return { slope: median(slopes.subarray(0, filled).sort()), score, variance, byChance: variance > 0 ? 2 * normalCdf(-apart / Math.sqrt(variance)) : 1 };
}

/** Of the score, where there is no trend, given how often equal times and equal values stand. */
function varianceOf(times: ArrayLike<number>, values: ArrayLike<number>): number {
  const n = times.length;
  const a = tiesIn(times);
  const b = tiesIn(values);
  const both = n < 3 ? 0 : (a.threes * b.threes) / (9 * n * (n - 1) * (n - 2));
  return (n * (n - 1) * (2 * n + 5) - a.spread - b.spread) / 18 + (a.pairs * b.pairs) / (2 * n * (n - 1)) + both;
}

/** Over groups of t equal ones: t(t−1), t(t−1)(t−2), and t(t−1)(2t+5). */
function tiesIn(list: ArrayLike<number>): { readonly pairs: number; readonly threes: number; readonly spread: number } {
  const counts = new Map<number, number>();
  for (let i = 0; i < list.length; i++) counts.set(list[i] as number, (counts.get(list[i] as number) ?? 0) + 1);
  const ties = { pairs: 0, threes: 0, spread: 0 };
  for (const t of counts.values()) {
    ties.pairs += t * (t - 1);
    ties.threes += t * (t - 1) * (t - 2);
    ties.spread += t * (t - 1) * (2 * t + 5);
  }
  return ties;
}
