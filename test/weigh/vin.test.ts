import { describe, expect, it } from 'vitest';
import { readVin } from '../../src/estimate/index.js';
import { read } from './weighed.js';

/** What the checker says about a number, in a text that can be weighed all the same. */
function said(vin: string) {
  const { diagnostics, errors, comparison } = read(`steelyard 1\nshop "S"\n  rate bench 100.00\nvehicle "Invented car"\n  vin ${vin}\noption one "One"\n  labour "Work" 1 h\n`);
  expect(errors).toEqual([]);
  expect(comparison.ranking).toHaveLength(1);
  expect(comparison.options[0]?.complete).toBe(true);
  return diagnostics.filter((one) => one.code.startsWith('vin'));
}

describe('the check digit of 49 CFR 565.15, tables III and IV', () => {
  it.each([
    { vin: '1G4AH59H45G118341', sum: 411, digit: '4', how: 'the CFR’s own sample, read' },
    { vin: '1M8GDM9AXKP042788', sum: 351, digit: 'X', how: 'well-known worked example, read' },
    { vin: '11111111111111111', sum: 89, digit: '1', how: 'computed' },
  ])('$vin: sum $sum, digit $digit ($how)', ({ vin, sum, digit }) => {
    expect(readVin(vin)).toEqual({ shape: 'good', sum, checkDigit: digit, checkDigitHolds: true, northAmerican: true });
    expect(said(vin)).toEqual([]);
  });

  it('finds any single letter or digit that is changed to one of another value (computed)', () => {
    const vin = '1M8GDM9AXKP042788';
    const weightOf = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
    for (let i = 0; i < vin.length; i++) {
      if (weightOf[i] === 0 || !/\d/.test(vin[i] as string)) continue;
      const other = String((Number(vin[i]) + 1) % 10);
      expect(readVin(vin.slice(0, i) + other + vin.slice(i + 1)).checkDigitHolds, `position ${i + 1}`).toBe(false);
    }
  });
});

describe('real numbers that fail it: a warning, never an error', () => {
  it.each([['WP0ZZZ99ZTS392124'], ['KLATF08Y1VB363636']])('%s (read and recomputed) is from outside North America, and is told so', (vin) => {
    const [found, ...more] = said(vin);
    expect(more).toEqual([]);
    expect([found?.code, found?.severity]).toEqual(['vin-check', 'warning']);
    expect(found?.text).toContain('ISO 3779 does not require the check digit');
    expect(found?.text).not.toContain('probably misread');
    expect(readVin(vin)).toMatchObject({ shape: 'good', checkDigitHolds: false, northAmerican: false });
  });

  it.each(['1', '2', '3', '4', '5'])('the first character %s is North America (ISO 3780, from memory): a misreading is likely', (first) => {
    const vin = `${first}M8GDM9AXKP042788`;
    const broken = readVin(vin).checkDigit === '0' ? vin.replace('AX', 'A1') : vin.replace('AX', 'A0');
    const [found] = said(broken);
    expect([found?.code, found?.severity]).toEqual(['vin-check', 'warning']);
    expect(found?.text).toContain('49 CFR 565.15');
    expect(found?.text).toContain('probably misread');
  });

  it('says what the ninth character shows and what it should be', () => {
    const [found] = said('1M8GDM9A1KP042788');
    expect(found?.text).toContain('ninth character is 1');
    expect(found?.text).toContain('it would be X');
  });
});

describe('shape: I, O and Q never occur, and there are 17 characters', () => {
  it.each(['IM8GDM9AXKP042788', '1M8GDM9AXKPO42788', '1M8GDM9AXKPQ42788', '1m8gdm9axkp042788'])('%s has a character that none may have', (vin) => {
    const [found, ...more] = said(vin);
    expect([found?.code, found?.severity, more.length]).toEqual(['vin-shape', 'warning', 0]);
    expect(found?.text).toContain('I, O or Q');
  });

  it.each(['1M8GDM9AXKP04278', '1M8GDM9AXKP0427880', 'X'])('%s has the wrong length', (vin) => {
    const [found, ...more] = said(vin);
    expect([found?.code, found?.severity, more.length]).toEqual(['vin-shape', 'warning', 0]);
    expect(found?.text).toContain(`this has ${vin.length}`);
  });
});
