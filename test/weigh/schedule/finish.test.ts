import { describe, expect, it, test } from 'vitest';
import { criticalPath, estimateFinish, finishWithChance, pertMean, pertVariance, type Activity, type FinishEstimate } from '../../../src/weigh/schedule/index.js';
import { PUBLISHED, table } from './published.js';

function estimate(activities: readonly Activity[]): FinishEstimate {
  const plan = criticalPath(activities);
  if (plan.kind !== 'planned') throw new Error(plan.kind);
  return estimateFinish(activities, plan);
}

describe('the finish of published networks', () => {
  test.each(PUBLISHED)('$source', ({ activities, finish, variance, chance: [moment, exact] }) => {
    const found = estimate(activities);
    expect(found.mean).toBeCloseTo(finish, 9);
    expect(found.variance).toBeCloseTo(variance, 4);
    // The chance stands there to five decimals at least: what it leaves open of the moment is that over the density.
    const density = Math.exp(-((moment - finish) ** 2) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
    expect(Math.abs(finishWithChance(found, exact) - moment) * density).toBeLessThan(0.51e-5);
    expect(finishWithChance(found, 0.5)).toBeCloseTo(finish, 9);
    // Quantiles .841621 and 1.281552: NIST/SEMATECH e-Handbook of Statistical Methods 1.3.6.7.1.
    expect(finishWithChance(found, 0.8)).toBeCloseTo(finish + 0.841621 * Math.sqrt(found.variance), 4);
    expect(finishWithChance(found, 0.9)).toBeCloseTo(finish + 1.281552 * Math.sqrt(found.variance), 4);
  });
});

describe('three points', () => {
  // Malcolm, Roseboom, Clark & Fazar, Operations Research 7(5), 1959; the values are computed from the formulas.
  test.each([[1, 2, 3, 2, 1 / 9], [2, 3.5, 8, 4, 1], [6, 9, 18, 10, 4], [20, 65, 80, 60, 100], [3, 3, 3, 3, 0]])('%d / %d / %d', (low, likely, high, mean, variance) => {
    expect(pertMean({ low, likely, high })).toBeCloseTo(mean, 12);
    expect(pertVariance({ low, likely, high })).toBeCloseTo(variance, 12);
  });

  it('of one figure are that figure to the last bit', () => {
    for (let tenths = 0; tenths < 200; tenths++) expect(pertMean({ low: tenths / 10, likely: tenths / 10, high: tenths / 10 })).toBe(tenths / 10);
  });
});

describe('several critical paths', () => {
  it('give the largest variance', () => {
    const found = estimate(table('A - 1/4/7; B - 4/4/4; C - 3/4/5; D A,B,C 0/1/2'));
    expect(found).toEqual({ mean: 5, variance: 1 + pertVariance({ low: 0, likely: 1, high: 2 }) });
  });

  it('give it even among more paths than are listed', () => {
    const rows = Array.from({ length: 10 }, (_, i) => `a${i} ${i === 0 ? '-' : `a${i - 1},b${i - 1}`} 4; b${i} ${i === 0 ? '-' : `a${i - 1},b${i - 1}`} 1/4/7`);
    expect(estimate(table(rows.join('; ')))).toEqual({ mean: 40, variance: 10 });
  });
});

describe('without variance', () => {
  it('is there at the mean, with any chance', () => {
    const found = estimate(table('A - 0.1; B A 0.2'));
    expect(found.variance).toBe(0);
    for (const chance of [0.1, 0.5, 0.9]) expect(finishWithChance(found, chance)).toBe(found.mean);
  });

  it('is critical whatever the noise where the figures are great', () => {
    const plan = criticalPath(table('A - 1000000; B A 0.1; C B 0.2; D - 1000000.3'));
    expect(plan).toMatchObject({ critical: ['A', 'D', 'B', 'C'], pathCount: 2 });
  });

  it('an empty network is finished at 0', () => {
    expect(finishWithChance(estimate([]), 0.9)).toBe(0);
  });
});
