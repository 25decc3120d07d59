import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { betaPert, contributions, createDraws, noise, quantileOf, shareSmallest, spreadOf } from '../../../src/weigh/chance/index.js';
import { runs } from '../../support/random-runs.js';

const column = (...values: number[]) => Float64Array.from(values);
const columns = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 60 });

describe('the spread of cases', () => {
  // Definition 5 of Hyndman & Fan (1996) worked by hand on 15, 20, 35, 40, 50: h = 5p + 1/2.
  test.each([[0, 15], [0.05, 15], [0.1, 15], [0.2, 17.5], [0.3, 20], [0.4, 27.5], [0.5, 35], [0.9, 50], [1, 50]])('quantile %d is %d', (p, value) => {
    expect(quantileOf(spreadOf(column(50, 15, 40, 20, 35)).sorted, p)).toBeCloseTo(value, 12);
  });

  it('has the quantiles of one stratified variable without error', () => {
    const curve = betaPert({ low: 1, likely: 2, high: 9 });
    const { sorted } = spreadOf(createDraws({ cases: 200, seed: 2 }).amounts('a', curve));
    for (let i = 0; i < 200; i++) expect(quantileOf(sorted, (i + 0.5) / 200)).toBeCloseTo(curve.quantile((i + 0.5) / 200), 9);
  });

  it('has mean and variance without losing digits: 1e9 + 4, 7, 13, 16 (a known example of cancellation, from memory: 30 over n - 1, so 22.5)', () => {
    expect(spreadOf(column(1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16))).toMatchObject({ mean: 1e9 + 10, variance: 22.5 });
    expect(spreadOf(column(1e16, 1, -1e16)).mean).toBeCloseTo(1 / 3, 15);
  });

  it('rises, stays within its cases, and has below a quantile the share that it stands for (random cases)', () => {
    fc.assert(fc.property(columns, (cases) => {
      const { sorted, mean, variance } = spreadOf(Float64Array.from(cases));
      const curve = Array.from({ length: 21 }, (_, i) => quantileOf(sorted, i / 20));
      expect([curve[0], curve[20]]).toEqual([Math.min(...cases), Math.max(...cases)]);
      for (let i = 1; i <= 20; i++) expect(curve[i]).toBeGreaterThanOrEqual(curve[i - 1] as number);
      expect(mean).toBeGreaterThanOrEqual(Math.min(...cases) - 1e-9);
      expect(mean).toBeLessThanOrEqual(Math.max(...cases) + 1e-9);
      expect(variance).toBeGreaterThanOrEqual(0);
      curve.forEach((x, i) => {
        const below = cases.filter((one) => one < x).length / cases.length;
        const atMost = cases.filter((one) => one <= x).length / cases.length;
        expect(below).toBeLessThanOrEqual(i / 20 + 0.5 / cases.length + 1e-12);
        expect(atMost).toBeGreaterThanOrEqual(i / 20 - 0.5 / cases.length - 1e-12);
      });
    }), runs(51, 60));
  });

  it('is nothing but numbers for one case, and refuses none', () => {
    expect(spreadOf(column(7))).toEqual({ sorted: column(7), mean: 7, variance: 0 });
    for (const cases of [column(), column(1, NaN), column(Infinity)]) expect(() => spreadOf(cases)).toThrow(RangeError);
    expect(() => quantileOf(column(1), 1.5)).toThrow(RangeError);
  });
});

describe('who is smallest', () => {
  it('shares ties equally', () => {
    expect(shareSmallest([column(1, 2, 3, 3), column(2, 2, 1, 3), column(5, 5, 5, 3)])).toEqual(column((1 + 0.5 + 1 / 3) / 4, (0.5 + 1 + 1 / 3) / 4, 1 / 3 / 4));
    expect(shareSmallest([column(4, 4)])).toEqual(column(1));
    expect(shareSmallest([column(), column()])).toEqual(column(0, 0));
    expect(shareSmallest([])).toEqual(column());
  });

  it('adds up to 1 (random columns of few values)', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 6 }), fc.array(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 6, maxLength: 6 }), { minLength: 1, maxLength: 30 }), (count, rows) => {
      const shares = shareSmallest(Array.from({ length: count }, (_, k) => Float64Array.from(rows, (row) => row[k] as number)));
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
      shares.forEach((share, k) => expect(share > 0).toBe(rows.some((row) => row[k] === Math.min(...row.slice(0, count)))));
    }), runs(52, 100));
  });
});

describe('what contributes to a spread', () => {
  const CASES = 1024;
  const draws = createDraws({ cases: CASES, seed: 6 });

  it('has the shares of variance of a sum, to the noise of correlations', () => {
    const inputs = [400, 200, 100, 100, 10].map((high, i) => draws.amounts(`line ${i}`, betaPert({ low: 0, likely: high / 4, high })));
    const total = inputs.reduce((sum, input) => sum.map((value, i) => value + (input[i] as number)), new Float64Array(CASES));
    const squares = [16, 4, 1, 1, 0.01];
    const all = squares.reduce((sum, one) => sum + one, 0);
    contributions(total, inputs).forEach((share, i) => {
      const wanted = (squares[i] as number) / all;
      // A correlation r is off by (1 - r²)/√n, its square by 2r times that; four of these, and the noise.
      expect(Math.abs(share - wanted)).toBeLessThan((4 * 2 * Math.sqrt(wanted) * (1 - wanted)) / Math.sqrt(CASES) + 2 * noise(CASES));
    });
  });

  it('is 1 for the output itself and for its opposite, by any scale', () => {
    const output = draws.amounts('a', betaPert({ low: 1e6, likely: 1e6 + 1, high: 1e6 + 5 }));
    for (const share of contributions(output, [output, output.map((value) => 3 - 1e-3 * value)])) expect(share).toBeCloseTo(1, 6);
    expect(contributions(Float64Array.from(draws.happens('b', 0.2), (one) => one * 750), [draws.happens('b', 0.2)])[0]).toBeCloseTo(1, 12);
  });

  it('is nothing for a column that has nothing to do with it, or does not vary', () => {
    const output = draws.amounts('a', betaPert({ low: 1, likely: 2, high: 5 }));
    const [other, never, always, same] = contributions(output, [draws.permutation('z'), draws.happens('c', 0), draws.happens('c', 1), new Float64Array(CASES).fill(0.1)]);
    expect(other).toBeLessThan(noise(CASES) * 2);
    expect([never, always, same]).toEqual([0, 0, 0]);
    expect(contributions(new Float64Array(CASES).fill(0.1), [output, output])).toEqual(column(0, 0));
    expect(contributions(column(), [column()])).toEqual(column(0));
    expect(contributions(column(3), [column(4)])).toEqual(column(0));
    expect(contributions(output, [])).toEqual(column());
  });
});
