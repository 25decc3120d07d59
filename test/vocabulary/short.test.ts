// Checked against decimal.js itself: its `times` and its `toDecimalPlaces`, digit by digit as the library keeps them.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Decimal, numberOf, roundedTo, times, zero } from '../../src/vocabulary/index.js';

const money = fc.stringMatching(/^\d{1,7}(\.\d{1,2})?$/).map((digits) => new Decimal(digits));
const written = fc.tuple(fc.boolean(), fc.stringMatching(/^\d{1,12}(\.\d{1,6})?$/)).map(([minus, digits]) => new Decimal(`${minus ? '-' : ''}${digits}`));
const small = fc.stringMatching(/^0\.0{0,8}\d{1,4}$/).map((digits) => new Decimal(digits));
const long = fc.tuple(written, fc.nat(50)).map(([value, power]) => value.div(60).times(new Decimal(10).pow(power - 10)));
const edges = fc.constantFrom('0', '-0', '0.005', '0.01', '0.015', '9999999.995', '9999999.99', '9999999', '10000000', '99999.99', '0.0000001', '0.00000001', '1e30', 'Infinity', '-Infinity', 'NaN').map((digits) => new Decimal(digits));
const numbers = fc.oneof({ weight: 4, arbitrary: money }, { weight: 2, arbitrary: written }, small, long, edges, fc.constant(zero));
const kept = ({ d, e, s }: Decimal) => ({ d, e, s });

describe('short numbers', () => {
  test('are multiplied as the library multiplies them', () => {
    fc.assert(fc.property(numbers, numbers, (a, b) => {
      expect(kept(times(a, b))).toEqual(kept(a.times(b)));
    }), { numRuns: 5_000 });
  });

  test('are rounded as the library rounds them, products of money and hours too', () => {
    const halves = fc.tuple(money, fc.nat(6), fc.constantFrom('0.5', '0.05', '0.005', '0.0005')).map(([value, places, half]) => value.toDecimalPlaces(places).plus(half));
    const products = fc.tuple(money, money).map(([a, b]) => times(a, b));
    const modes = fc.constantFrom(Decimal.ROUND_HALF_UP, Decimal.ROUND_HALF_DOWN, Decimal.ROUND_HALF_EVEN);
    fc.assert(fc.property(fc.oneof(numbers, halves, products), fc.nat(9), modes, (value, places, mode) => {
      expect(kept(roundedTo(value, places, mode))).toEqual(kept(value.toDecimalPlaces(places, mode)));
    }), { numRuns: 8_000 });
  });

  test('are the floats that the library makes of them', () => {
    fc.assert(fc.property(numbers, (value) => Object.is(numberOf(value), value.toNumber())), { numRuns: 8_000 });
  });

  // By hand: the half goes up, down, or to the even neighbour; a whole part grows by one where its decimals are full.
  test.each([['2.345', 2, '2.35', '2.34', '2.34'], ['2.355', 2, '2.36', '2.35', '2.36'], ['9.995', 2, '10', '9.99', '10'], ['2.5', 0, '3', '2', '2'], ['3.5', 0, '4', '3', '4'], ['2.3451', 2, '2.35', '2.35', '2.35']] as const)('%s to %i places', (value, places, up, down, even) => {
    const rounded = [Decimal.ROUND_HALF_UP, Decimal.ROUND_HALF_DOWN, Decimal.ROUND_HALF_EVEN].map((mode) => roundedTo(new Decimal(value), places, mode).toFixed());
    expect(rounded).toEqual([up, down, even]);
  });
});
