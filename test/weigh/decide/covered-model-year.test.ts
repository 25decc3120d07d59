import { describe, expect, it } from 'vitest';
import { readVin } from '../../../src/estimate/index.js';
import { modelYearOf } from '../../../src/weigh/decide/covered-model-year.js';

/** An invented number with these characters in positions 7 and 10 and the check digit that makes it hold. */
function vinWith(seventh: string, tenth: string): string {
  const without = `1ZZAA1${seventh}A0${tenth}Z000001`;
  return without.slice(0, 8) + (readVin(without).checkDigit ?? '0') + without.slice(9);
}

describe('49 CFR 565.15: position 10 by the table of year codes, position 7 for the thirty years (from memory, recomputed)', () => {
  const codes: Readonly<Record<string, number>> = {
    A: 1980, B: 1981, C: 1982, D: 1983, E: 1984, F: 1985, G: 1986, H: 1987, J: 1988, K: 1989, L: 1990, M: 1991, N: 1992, P: 1993, R: 1994,
    S: 1995, T: 1996, V: 1997, W: 1998, X: 1999, Y: 2000, 1: 2001, 2: 2002, 3: 2003, 4: 2004, 5: 2005, 6: 2006, 7: 2007, 8: 2008, 9: 2009,
  };

  it('thirty codes, each for two years', () => {
    expect(Object.keys(codes)).toHaveLength(30);
    for (const [code, year] of Object.entries(codes)) {
      expect(modelYearOf(vinWith('5', code)), code).toBe(year);
      expect(modelYearOf(vinWith('B', code)), code).toBe(year + 30);
    }
  });

  it.each(['I', 'O', 'Q', 'U', 'Z', '0'])('%s is no code', (code) => {
    expect(modelYearOf(vinWith('5', code))).toBeUndefined();
    expect(modelYearOf(vinWith('B', code))).toBeUndefined();
  });
});

describe('numbers whose check digits are published', () => {
  it.each([
    { vin: '1G4AH59H45G118341', year: 2005, how: 'the CFR’s own sample, read; the year by the table' },
    { vin: '1M8GDM9AXKP042788', year: 1989, how: 'well-known worked example, read; the year by the table' },
    { vin: '11111111111111111', year: 2001, how: 'computed' },
  ])('$vin: $year ($how)', ({ vin, year }) => {
    expect(modelYearOf(vin)).toBe(year);
  });

  it.each([
    ['WP0ZZZ99ZTS392124', 'real, from a region without the check digit'], ['KLATF08Y1VB363636', 'the same'],
    ['1G4AH59H45G11834', 'a character is missing'], ['1G4AH59H45G118342', 'a slip in the last'], ['1g4ah59h45g118341', 'small letters'], ['', 'nothing'],
  ])('%s: can not be told (%s)', (vin) => {
    expect(modelYearOf(vin)).toBeUndefined();
  });
});
