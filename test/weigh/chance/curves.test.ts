import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { betaStrata } from '../../../src/weigh/chance/beta-strata.js';
import { betaOf } from '../../../src/weigh/chance/beta.js';
import { betaPert, certain, type Curve, type ThreePoints } from '../../../src/weigh/chance/index.js';
import { runs } from '../../support/random-runs.js';
import { chanceOfAtMost, sumOf } from './discrete.js';
import { triangular } from './triangular.js';

const at = (low: number, likely: number, high: number): ThreePoints => ({ low, likely, high });

describe('published values', () => {
  // Computed from the stated formulas, apart from this program; (6,9,18) is a task of the Reliable Construction case
  // (Hillier & Lieberman, Introduction to Operations Research; from memory, recomputed), whose mean is 10 there too.
  const cases: readonly { readonly name: string; readonly curve: Curve; readonly mean: number; readonly variance: number; readonly quantiles: Readonly<Record<string, number>> }[] = [
    { name: 'triangular (1,4,7)', curve: triangular(at(1, 4, 7)), mean: 4, variance: 1.5, quantiles: { '0.5': 4, '0.8': 5.102633, '0.9': 5.658359 } },
    { name: 'triangular (0,1,4)', curve: triangular(at(0, 1, 4)), mean: 1.666667, variance: 0.722222, quantiles: { '0.5': 1.55051 } },
    { name: 'beta-PERT (1,4,7)', curve: betaPert(at(1, 4, 7)), mean: 4, variance: 1.285714, quantiles: { '0.5': 4, '0.8': 5.040412, '0.9': 5.520181 } },
    { name: 'beta-PERT (6,9,18)', curve: betaPert(at(6, 9, 18)), mean: 10, variance: 4.571429, quantiles: { '0.8': 11.882308 } },
  ];
  test.each(cases)('$name', ({ curve, mean, variance, quantiles }) => {
    expect(curve.mean).toBeCloseTo(mean, 6);
    expect(curve.variance).toBeCloseTo(variance, 6);
    for (const [p, value] of Object.entries(quantiles)) {
      expect(curve.quantile(Number(p))).toBeCloseTo(value, 6);
      expect(curve.cdf(value)).toBeCloseTo(Number(p), 6);
    }
  });

  it('gives (1,4,7) the parameters 3 and 3, and another variance than the ((b - a)/6)² of the network method', () => {
    expect(betaPert(at(1, 4, 7))).toMatchObject({ alpha: 3, beta: 3 });
    const rule = ({ low, high }: ThreePoints) => ((high - low) / 6) ** 2;
    expect(rule(at(1, 4, 7)) / betaPert(at(1, 4, 7)).variance).toBeCloseTo(7 / 9, 12); // 22 % below
    expect(rule(at(0, 0, 1)) / betaPert(at(0, 0, 1)).variance).toBeCloseTo(7 / 5, 12); // 40 % above
  });
});

describe('the incomplete beta function', () => {
  it('is the binomial tail for whole parameters (Abramowitz & Stegun 26.5.24)', () => {
    for (const [a, b] of [[1, 5], [2, 4], [3, 3], [5, 1], [7, 40], [1, 1]] as const) {
      for (const x of [0.001, 0.1, 0.37, 0.5, 0.9, 0.9999]) {
        const binomial = sumOf(Array.from({ length: a + b - 1 }, () => ({ values: [0, 1], chances: [1 - x, x] })));
        expect(betaOf(a, b).cdf(x)).toBeCloseTo(1 - chanceOfAtMost(binomial, a - 1), 13);
      }
    }
  });

  // Computed with the incomplete beta function of SciPy 1 (betaincinv).
  test.each([[2.6, 3.4, 0.1, 0.188619159913634], [1.0001, 4.9999, 0.0005, 0.000100101332449035], [4.2, 1.8, 0.9995, 0.995713971601277]])('quantile of beta(%d, %d) at %d', (a, b, p, value) => {
    expect(betaOf(a, b).quantile(p)).toBeCloseTo(value, 12);
  });

  it('refuses parameters below 1', () => {
    for (const [a, b] of [[0.5, 3], [3, NaN]] as const) expect(() => betaOf(a, b)).toThrow(RangeError);
  });
});

/** Points in order, often with two or three of them equal. */
const points = fc.tuple(fc.double({ min: -1e4, max: 1e4, noNaN: true }), fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 1e4, noNaN: true })), fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 1e4, noNaN: true })))
  .map(([low, rise, fall]) => at(low, low + rise, low + rise + fall));

describe('beta-PERT', () => {
  it('has quantiles that undo its cdf, between its ends and rising (random points)', () => {
    fc.assert(fc.property(points, fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), (three, p) => {
      const curve = betaPert(three);
      const x = curve.quantile(p);
      expect(x).toBeGreaterThanOrEqual(three.low);
      expect(x).toBeLessThanOrEqual(three.high);
      expect([curve.quantile(0) + 0, curve.quantile(1) + 0]).toEqual([three.low + 0, three.high + 0]);
      expect([curve.cdf(three.low - 1), curve.cdf(three.high)]).toEqual([0, 1]);
      const range = three.high - three.low;
      // Rounding of x against a narrow range is not the curve's error.
      if (range > 0) expect(Math.abs(curve.cdf(x) - p)).toBeLessThan(1e-9 + (1e-15 * 2e4 * 10) / range);
      expect(curve.quantile(Math.min(1, p * 1.01))).toBeGreaterThanOrEqual(x);
    }), runs(11, 150));
  });

  it('has the mean and variance of its own strata, within half a stratum', () => {
    fc.assert(fc.property(points, (three) => {
      const curve = betaPert(three);
      const strata = curve.strata(2000);
      const range = three.high - three.low;
      const mean = strata.reduce((sum, x) => sum + x / 2000, 0);
      expect(Math.abs(mean - curve.mean)).toBeLessThanOrEqual(range / 4000 + 1e-9);
      expect(Math.abs(strata.reduce((sum, x) => sum + (x - mean) ** 2 / 2000, 0) - curve.variance)).toBeLessThanOrEqual(1e-3 * range * range + 1e-9);
    }), runs(12, 60));
  });

  it('takes equal points without a NaN', () => {
    for (const three of [at(5, 5, 5), at(5, 5, 9), at(5, 9, 9), at(0, 0, 0), at(-3, -3, -1)]) {
      const curve = betaPert(three);
      const all = [curve.mean, curve.variance, curve.cdf(5), curve.quantile(0), curve.quantile(0.3), curve.quantile(1), ...curve.strata(7)];
      expect(all.every(Number.isFinite), all.join(' ')).toBe(true);
    }
    expect(betaPert(at(5, 5, 5)).strata(3)).toEqual(certain(5).strata(3));
    expect(betaPert(at(5, 5, 5)).variance).toBe(0);
  });

  it('refuses points out of order and chances beyond 0 to 1', () => {
    for (const three of [at(2, 1, 3), at(1, 4, 3), at(NaN, 1, 2), at(0, 1, Infinity)]) expect(() => betaPert(three)).toThrow(RangeError);
    for (const p of [-1, 2, NaN]) for (const three of [at(1, 2, 3), at(2, 2, 2)]) expect(() => betaPert(three).quantile(p)).toThrow(RangeError);
  });
});

describe('the table of a beta-PERT', () => {
  it('is exact to 1e-12 of the range at every stratum, for every shape', () => {
    let worst = 0;
    for (const alpha of [1, 1.0001, 1.02, 1.3, 2, 2.7, 3, 3.9, 4.6, 4.99, 5]) {
      const shape = betaOf(alpha, 6 - alpha);
      betaStrata(alpha, 6 - alpha, 1024).forEach((x, i) => (worst = Math.max(worst, Math.abs(x - shape.quantile((i + 0.5) / 1024)))));
    }
    expect(worst).toBeLessThan(1e-12);
  });

  it('is worked out once for a shape, whatever its range, and forgotten in the end', () => {
    const first = betaStrata(2.5, 3.5, 16);
    expect(betaStrata(2.5, 3.5, 16)).toBe(first);
    for (let i = 0; i < 300; i++) betaStrata(1 + i / 100, 5 - i / 100, 2);
    expect(betaStrata(2.5, 3.5, 16)).not.toBe(first);
    expect(betaStrata(2.5, 3.5, 16)).toEqual(first);
  });
});
