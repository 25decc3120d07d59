import { describe, expect, test } from 'vitest';
import { resolved, told, wordsOf } from './estimated.js';

const vin = (written: string) => resolved(`steelyard 1\nvehicle "V"\n  vin ${written}\n`);
const compression = (readings: string) => resolved(`steelyard 1\nfinding f "F"\n  compression ${readings} psi\n`);

// 49 CFR 565.15: the worked example of the check digit is 1M8GDM9AXKP042788.
describe('a VIN', () => {
  test('with its check digit is right', () => {
    expect(told(vin('1M8GDM9AXKP042788'))).toEqual([]);
    expect(told(vin('11111111111111111'))).toEqual([]); // every digit 1: the weights add up to 89, and 89 is 1 more than 8 elevens
  });

  test('with another is told, and which it should be', () => {
    expect(told(vin('1M8GDM9A1KP042788'))).toEqual([['vin-check', '1M8GDM9A1KP042788']]);
    expect(wordsOf(vin('1M8GDM9A1KP042788'), 'vin-check')).toContain('ninth character is 1; worked out from the others it would be X');
  });

  test('has 17 characters, and no I, O or Q', () => {
    expect(told(vin('1M8GDM9AXKP04278'))).toEqual([['vin-shape', '1M8GDM9AXKP04278']]);
    expect(wordsOf(vin('1M8GDM9AXKP04278'), 'vin-shape')).toContain('this has 16');
    expect(wordsOf(vin('1M8GDM9AXKP0427888'), 'vin-shape')).toContain('this has 18');
    for (const written of ['1M8GDM9AXKPO42788', '1M8GDM9AXKPI42788', '1M8GDM9AXKPQ42788', '1M8GDM9AXKp042788']) expect(wordsOf(vin(written), 'vin-shape')).toContain('no I, O or Q');
  });
});

// TM 5-4210-230-14&P-1: the lowest reading at least three quarters of the highest.
describe('compression readings', () => {
  test('are even from three quarters of the best on', () => {
    expect(told(compression('150 200 175'))).toEqual([]);
    expect(told(compression('200 150'))).toEqual([]);
    expect(told(compression('149.9 200'))).toEqual([['compression-uneven', '149.9 200 psi']]);
    const uneven = compression('171 200 38 173');
    expect(told(uneven)).toEqual([['compression-uneven', '171 200 38 173 psi']]);
    expect(wordsOf(uneven, 'compression-uneven')).toContain('The lowest reading, 38, is 19.0 % of the highest, 200.');
    expect(told(compression('0 200'))).toHaveLength(1);
  });

  test('can’t be held against each other where there is one, or none turns over', () => {
    expect(told(compression('12'))).toEqual([]);
    expect(told(compression('0'))).toEqual([]);
    expect(told(compression('0 0 0'))).toEqual([]);
  });
});
