import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaPert, createDraws, type Curve, meanOf, quantileOf, spreadOf, statesOf, type YesNo } from '../../../src/weigh/chance/index.js';
import { runs } from '../../support/random-runs.js';
import { chanceOfAtMost, type Distribution, momentsOf, sumOf } from './discrete.js';
import { meanErrorBound, shareError } from './errors.js';
import { triangular } from './triangular.js';

const CASES = 1024;

/** Column by column, added up case by case. */
function added(columns: readonly Float64Array[]): Float64Array {
  const sum = new Float64Array(CASES);
  for (const column of columns) for (let i = 0; i < CASES; i++) sum[i] = (sum[i] as number) + (column[i] as number);
  return sum;
}

/**
 * The farthest that the sampled chance of at most x lies from the exact one. Bounded in these tests by what 1024
 * independent draws exceed once in a million times (Dvoretzky-Kiefer-Wolfowitz inequality, Massart, Annals of
 * Probability 18, 1990): √(ln(2/1e-6)/2n) = 0.084; strata only lessen it.
 */
function distance(sorted: Float64Array, of: Distribution): number {
  let worst = 0;
  let chance = 0;
  let atMost = 0;
  of.values.forEach((value, i) => {
    chance += of.chances[i] as number;
    // Between values that differ in rounding alone there is nothing to see.
    if (i + 1 < of.values.length && (of.values[i + 1] as number) - value < 1e-6) return;
    while (atMost < sorted.length && (sorted[atMost] as number) <= value + 1e-7) atMost++;
    worst = Math.max(worst, Math.abs(atMost / sorted.length - chance));
  });
  return worst;
}
const FARTHEST = Math.sqrt(Math.log(2 / 1e-6) / (2 * CASES));

describe('sampled chances against all states', () => {
  const extras = fc.array(fc.record({ chance: fc.double({ min: 0, max: 1, noNaN: true }), amount: fc.integer({ min: -500, max: 3000 }) }), { minLength: 1, maxLength: 12 });

  it('have the mean to within Σ|amount|/2n, and the distribution (up to 12 independent chances)', () => {
    fc.assert(fc.property(extras, fc.integer(), (all, seed) => {
      const draws = createDraws({ cases: CASES, seed });
      const sum = spreadOf(added(all.map(({ chance, amount }, i) => Float64Array.from(draws.happens(`extra ${i}`, chance), (one) => one * amount))));
      const found = statesOf(all);
      if (found.kind !== 'states') throw new Error(found.kind);
      const truth = sumOf([{ values: Array.from(found.happened, (state) => all.reduce((total, { amount }, i) => total + ((state >> i) & 1) * amount, 0)), chances: found.chances }]);
      expect(Math.abs(sum.mean - momentsOf(truth).mean)).toBeLessThanOrEqual(meanErrorBound(all.map(({ amount }) => amount), CASES) + 1e-9);
      expect(distance(sum.sorted, truth)).toBeLessThan(FARTHEST);
      // And the same truth by convolution.
      const convolved = sumOf(all.map(({ chance, amount }) => ({ values: [0, amount], chances: [1 - chance, chance] })));
      expect(convolved.values).toEqual(truth.values);
      convolved.chances.forEach((chance, i) => expect(chance).toBeCloseTo(truth.chances[i] as number, 12));
    }), runs(41, 20));
  });

  it('have the distribution where one needs another', () => {
    const all: readonly YesNo[] = [{ chance: 0.3 }, { chance: 0.4, under: [0] }, { chance: 0.5, under: [1] }, { chance: 0.15 }, { chance: 0.9, under: [3] }];
    const amounts = [800, 350, 1200, 90, 60];
    const draws = createDraws({ cases: CASES, seed: 8 });
    const happened: Uint8Array[] = [];
    all.forEach(({ chance, under: [parent] = [] }, i) => {
      const own = draws.happens(`extra ${i}`, chance);
      happened.push(parent === undefined ? own : own.map((one, k) => one & (happened[parent]?.[k] as number)));
    });
    const sum = spreadOf(added(happened.map((column, i) => Float64Array.from(column, (one) => one * (amounts[i] as number)))));
    const found = statesOf(all);
    if (found.kind !== 'states') throw new Error(found.kind);
    const truth = sumOf([{ values: Array.from(found.happened, (state) => amounts.reduce((total, amount, i) => total + ((state >> i) & 1) * amount, 0)), chances: found.chances }]);
    expect(distance(sum.sorted, truth)).toBeLessThan(FARTHEST);
    // Products of chances are not bounded by their strata: five standard errors of independent draws.
    const { mean, variance } = momentsOf(truth);
    expect(Math.abs(sum.mean - mean)).toBeLessThan(5 * Math.sqrt(variance / CASES));
  });
});

describe('sampled sums against closed forms', () => {
  const three = fc.tuple(fc.double({ min: 0, max: 900, noNaN: true }), fc.double({ min: 0, max: 500, noNaN: true }), fc.double({ min: 1, max: 900, noNaN: true }))
    .map(([low, rise, fall]) => ({ low, likely: low + rise, high: low + rise + fall }));

  it.each([['triangular', triangular], ['beta-PERT', betaPert]] as const)('have the mean of %s terms to within Σ range/2n, and their variance to 5√(2/n)', (_, curveOf) => {
    let worst = 0;
    fc.assert(fc.property(fc.array(three, { minLength: 1, maxLength: 12 }), fc.integer(), (all, seed) => {
      const draws = createDraws({ cases: CASES, seed });
      const curves = all.map(curveOf);
      const sum = spreadOf(added(curves.map((curve, i) => draws.amounts(`line ${i}`, curve))));
      const bound = meanErrorBound(all.map(({ low, high }) => high - low), CASES);
      const off = Math.abs(sum.mean - curves.reduce((total, { mean }) => total + mean, 0));
      worst = Math.max(worst, off / bound);
      expect(off).toBeLessThanOrEqual(bound + 1e-9);
      // Terms are paired at random: their correlations of about 1/√n enter the variance, √(2/n) of it at most.
      const variance = curves.reduce((total, one) => total + one.variance, 0);
      expect(Math.abs(sum.variance / variance - 1)).toBeLessThan(5 * Math.sqrt(2 / CASES));
    }), runs(42, 30));
    expect(worst).toBeGreaterThan(0);
  });

  it('have the mean of one term to a stratum, for any number of cases', () => {
    for (const cases of [1, 2, 7, 64, 1000]) {
      const curve = betaPert({ low: 0, likely: 1, high: 10 });
      expect(Math.abs(meanOf(createDraws({ cases, seed: 1 }).amounts('a', curve)) - curve.mean)).toBeLessThanOrEqual(meanErrorBound([10], cases));
    }
  });

  it('have the quantiles of the convolution of finely cut terms, within 4 standard errors of a share', () => {
    const curves: readonly Curve[] = [
      betaPert({ low: 400, likely: 500, high: 900 }), betaPert({ low: 50, likely: 50, high: 300 }), triangular({ low: 100, likely: 250, high: 280 }),
      betaPert({ low: 10, likely: 60, high: 60 }), triangular({ low: 0, likely: 0, high: 350 }),
    ];
    // Each cut into whole units by its exact cdf: off by less than half a unit of some 1000.
    const truth = sumOf(curves.map((curve) => {
      const values = Array.from({ length: curve.high - curve.low + 1 }, (_, i) => curve.low + i);
      return { values, chances: values.map((value) => curve.cdf(value + 0.5) - curve.cdf(value - 0.5)) };
    }));
    const mean = curves.reduce((total, one) => total + one.mean, 0);
    expect(momentsOf(truth).mean).toBeCloseTo(mean, 0);
    for (const seed of [1, 2, 3]) {
      const draws = createDraws({ cases: CASES, seed });
      const { sorted } = spreadOf(added(curves.map((curve, i) => draws.amounts(`line ${i}`, curve))));
      for (const p of [0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95]) {
        const x = quantileOf(sorted, p);
        const room = 4 * shareError(p, CASES);
        expect(chanceOfAtMost(truth, x - 2)).toBeLessThan(p + room);
        expect(chanceOfAtMost(truth, x + 2)).toBeGreaterThan(p - room);
      }
    }
  });

  it('have what an uncertain extra comes to that may or may not come, within 5 standard errors', () => {
    const curve = betaPert({ low: 200, likely: 300, high: 900 });
    const draws = createDraws({ cases: CASES, seed: 4 });
    const extra = draws.amounts('extra', curve);
    const happens = draws.happens('extra happens', 0.35);
    const sum = spreadOf(extra.map((amount, i) => amount * (happens[i] as number)));
    // Moments of a product of independent variables.
    const mean = 0.35 * curve.mean;
    const variance = 0.35 * (curve.variance + curve.mean ** 2) - mean ** 2;
    expect(Math.abs(sum.mean - mean)).toBeLessThan(5 * Math.sqrt(variance / CASES));
    expect(Math.abs(sum.variance / variance - 1)).toBeLessThan(0.1);
  });
});
