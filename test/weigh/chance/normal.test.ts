import { Decimal as Library } from 'decimal.js';
import { describe, expect, it, test } from 'vitest';
import { exp, log } from '../../../src/weigh/chance/elementary.js';
import { normalCdf, normalQuantile } from '../../../src/weigh/chance/index.js';

const Exact = Library.clone({ precision: 130 });
const DENSITY_AT_0 = new Exact(1).div(Exact.acos(-1).times(2).sqrt());

/** Φ(x) to 20 digits and more for |x| up to 12.5: Abramowitz & Stegun 26.2.11, a series that uses nothing of the product. */
function exactCdf(x: number): Library {
  const square = new Exact(x).pow(2);
  let term = new Exact(x);
  let sum = term;
  for (let k = 1; !term.isZero() && term.abs().gt('1e-125'); k++) {
    term = term.times(square).div(2 * k + 1);
    sum = sum.plus(term);
  }
  return sum.times(square.div(-2).exp()).times(DENSITY_AT_0).plus(0.5);
}

describe('standard normal', () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.1 prints five digits (.84134, .97500); more digits computed from the series.
  test.each([[1, 0.841344746, 9], [1.96, 0.975002105, 9], [0, 0.5, 15], [-1, 0.158655254, 9]])('cdf(%d) = %d', (x, value, digits) => {
    expect(normalCdf(x)).toBeCloseTo(value, digits);
  });

  // NIST/SEMATECH e-Handbook 1.3.6.7.1; digits beyond three from memory, recomputed.
  test.each([[0.8, 0.841621, 6], [0.9, 1.281552, 6], [0.975, 1.959964, 6], [0.5, 0, 15]])('quantile(%d) = %d', (p, value, digits) => {
    expect(normalQuantile(p)).toBeCloseTo(value, digits);
  });

  it('agrees with the series to 1e-15, to 1e-12 of itself in the lower tail, and its quantile to 1e-14 of itself', () => {
    // The coefficients of both sources are from memory: this is their check.
    for (const x of [-12.25, -8.4, -7.08, -7.06, -6.5, -5, -4.1, -3.001, -2.999, -2.2, -1.44, -1, -0.43, -0.1, 0.01, 0.6, 1.5, 2.5, 3.7, 5, 8]) {
      const value = exactCdf(x);
      const off = value.minus(normalCdf(x)).abs();
      expect(off.toNumber()).toBeLessThan(1e-15);
      expect(off.div(value).toNumber()).toBeLessThan(1e-12);
      if (x < 2) expect(Math.abs(normalQuantile(value.toNumber()) / x - 1)).toBeLessThan(x > -0.2 ? 1e-13 : 1e-14);
    }
  });

  // Computed with the normal distribution of mpmath 1.
  test.each([[-20, 2.753624118606234e-89], [-36.5, 5.544725713074845e-292]])('cdf(%d) = %d', (x, value) => {
    expect(Math.abs(normalCdf(x) / value - 1)).toBeLessThan(1e-12);
    expect(normalQuantile(value)).toBeCloseTo(x, 12);
  });

  it('rises, is symmetrical, and has its ends', () => {
    for (let x = -8; x < 8; x += 0.01) {
      expect(normalCdf(x + 0.01)).toBeGreaterThanOrEqual(normalCdf(x));
      expect(normalCdf(x) + normalCdf(-x)).toBeCloseTo(1, 15);
    }
    expect([normalCdf(-Infinity), normalCdf(Infinity), normalCdf(NaN), normalCdf(-38)]).toEqual([0, 1, NaN, 0]);
    expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity]);
    for (const p of [-0.1, 1.1, NaN]) expect(() => normalQuantile(p)).toThrow(RangeError);
  });
});

describe('exp and log of + - * / alone', () => {
  it('agree with decimal arithmetic to 1e-15 of themselves (points that binary and decimal write alike)', () => {
    for (const x of [-744, -700, -87.25, -20.5, -1, -0.34375, -1e-9, 0, 1e-9, 0.5, 1, 2.75, 33.375, 700]) {
      const value = new Exact(x).exp();
      expect(value.minus(exp(x)).abs().toNumber()).toBeLessThanOrEqual(Math.max(5e-324, 1e-15 * value.toNumber()));
    }
    for (const x of [1e-300, 1e-17, 0.001, 0.3, 0.70710678, 0.9990234375, 1.0009765625, 1.5, 2, 10, 4.2e9, 1e17, 1.7e308]) {
      expect(Math.abs(log(x) / new Exact(x).ln().toNumber() - 1)).toBeLessThan(1e-15);
    }
  });

  it('have their ends', () => {
    expect([exp(-Infinity), exp(-1000), exp(1000), exp(NaN), exp(0)]).toEqual([0, 0, Infinity, NaN, 1]);
    expect([log(0), log(-1), log(NaN), log(Infinity), log(1)]).toEqual([-Infinity, NaN, NaN, Infinity, 0]);
  });
});
