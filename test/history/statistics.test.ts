import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { normalCdf } from '../../src/weigh/chance/index.js';
import { isFarOff, median, middleOf, quantile } from '../../src/weigh/history/spread.js';
import { trendOf } from '../../src/weigh/history/trend.js';

interface Reference {
  readonly numpy: string;
  readonly scipy: string;
  readonly spread: readonly { readonly values: readonly number[]; readonly quantiles: readonly number[]; readonly mad: number }[];
  readonly trend: readonly { readonly times: readonly number[]; readonly values: readonly number[]; readonly slope: number; readonly pvalue: number }[];
}

/**
 * Computed with NumPy 2.4.6 and SciPy 1.17.1 on random samples: numpy.quantile(method='median_unbiased'),
 * scipy.stats.median_abs_deviation, theilslopes, and kendalltau(method='asymptotic').
 */
const reference = JSON.parse(readFileSync(path.join(import.meta.dirname, 'reference.json'), 'utf8')) as Reference;
const sorted = (values: readonly number[]) => Float64Array.from(values).sort();

describe('quantiles', () => {
  test.each(reference.spread)('of $values.length values are those of a general library', ({ values, quantiles }) => {
    expect([0.1, 0.5, 0.9].map((p) => quantile(sorted(values), p)).map((value) => value.toFixed(9))).toEqual(quantiles.map((value) => value.toFixed(9)));
  });

  // R's quantile(seq(3), probs, type = 8), as printed in a public test of another implementation, read there.
  test.each([[0, 1], [0.1, 1], [0.2, 1], [0.3, 1.333333], [0.4, 1.666667], [0.5, 2], [0.6, 2.333333], [0.7, 2.666667], [0.8, 3], [1, 3]])('of 1, 2, 3 at %s: %s, as R has it', (p, value) => {
    expect(quantile(sorted([3, 1, 2]), p)).toBeCloseTo(value, 6);
  });

  test('never leave the sample, and rise', () => {
    for (const { values } of reference.spread) {
      const list = sorted(values);
      const all = Array.from({ length: 101 }, (_, i) => quantile(list, i / 100));
      expect(all).toEqual([...all].sort((a, b) => a - b));
      expect([all[0], all[100]]).toEqual([list[0], list[list.length - 1]]);
    }
  });
});

describe('middle and spread', () => {
  test.each(reference.spread)('of $values.length values are those of a general library', ({ values, mad }) => {
    expect(middleOf(values).spread).toBeCloseTo(mad, 12);
    expect(middleOf(values).middle).toBe(median(sorted(values)));
  });

  // By hand: median 5; distances 4 3 2 1 0 1 2 3 25, in order 0 1 1 2 2 3 3 4 25, so the spread is 2.
  const values = [1, 2, 3, 4, 5, 6, 7, 8, 30];
  test('worked by hand', () => {
    expect(middleOf(values)).toEqual({ middle: 5, spread: 2 });
  });

  // By hand: 0.6745 × 25 / 2 = 8.43; the line is crossed at 5 + 3.5 × 2 / 0.6745 = 15.378.
  test.each([[30, true], [15.37, false], [15.38, true], [8, false], [-5.38, true], [-5.37, false]])('%s is far off: %s', (value, far) => {
    expect(isFarOff(value, middleOf(values))).toBe(far);
  });

  test('where most are equal nothing is called far off', () => {
    expect(isFarOff(40, middleOf([2, 2, 2, 2, 40]))).toBe(false);
  });
});

describe('trend', () => {
  test.each(reference.trend)('slope and test of $values.length values are those of a general library', ({ times, values, slope, pvalue }) => {
    const found = trendOf(times, values);
    expect(found?.slope).toBeCloseTo(slope, 12);
    // The library corrects nothing for continuity; score and variance are the same.
    expect(2 * normalCdf(-Math.abs(found?.score ?? 0) / Math.sqrt(found?.variance ?? 1))).toBeCloseTo(pvalue, 10);
    expect(found?.byChance).toBeGreaterThan(pvalue);
  });

  // The values for 1 to 100 are those of a public test of MannKendall.jl, read there: score 4950, variance 112750, z 14.7387.
  test('of a straight line is the published one', () => {
    const line = Array.from({ length: 100 }, (_, i) => i + 1);
    const found = trendOf(line, line);
    expect(found).toMatchObject({ slope: 1, score: 4950, variance: 112_750 });
    expect(((found?.score ?? 0) - 1) / Math.sqrt(found?.variance ?? 1)).toBeCloseTo(14.73869998208331, 12);
  });

  test('is none where all times, or all values, are one', () => {
    expect(trendOf([5, 5, 5], [1, 2, 3])).toBeUndefined();
    expect(trendOf([1, 2, 3], [4, 4, 4])).toMatchObject({ slope: 0, score: 0, byChance: 1 });
  });

  test('turns with time and with the sign of the values', () => {
    for (const { times, values, slope } of reference.trend) {
      expect(trendOf(times.map((time) => -time), values)?.slope).toBeCloseTo(-slope, 12);
      expect(trendOf(times, values.map((value) => -value))?.score).toBe(-(trendOf(times, values)?.score ?? 0));
    }
  });
});
