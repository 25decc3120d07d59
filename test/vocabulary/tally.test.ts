// Checked against decimal.js itself: its `plus`, number by number in the same order, and its `comparedTo`.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalOf } from '../../src/vocabulary/decimal.js';
import { compare, Decimal, Tally, zero } from '../../src/vocabulary/index.js';

const written = fc.tuple(fc.boolean(), fc.stringMatching(/^\d{1,12}(\.\d{1,6})?$/)).map(([minus, digits]) => new Decimal(`${minus ? '-' : ''}${digits}`));
/** Minutes divided by 60 fill all 60 digits; a power of ten goes beyond the words that are added up here. */
const long = fc.tuple(written, fc.nat(50)).map(([value, power]) => value.div(60).times(new Decimal(10).pow(power - 10)));
const numbers = fc.array(fc.oneof({ weight: 6, arbitrary: written }, { weight: 1, arbitrary: long }, { weight: 1, arbitrary: fc.constant(zero) }), { maxLength: 12 });

function tallied(values: readonly Decimal[]): Decimal {
  const tally = new Tally();
  for (const value of values) tally.add(value);
  return tally.total();
}

describe('a tally', () => {
  test('is the sum to the last digit, whatever the order of large and small, and of signs', () => {
    fc.assert(fc.property(numbers, (values) => {
      expect(tallied(values).toFixed()).toBe(values.reduce((sum, value) => sum.plus(value), zero).toFixed());
    }), { numRuns: 2_000 });
  });

  test.each([[[], '0'], [['0.1', '0.2'], '0.3'], [['10000000', '-0.000001'], '9999999.999999'], [['-10000000', '20000000', '-10000000'], '0'], [['999999999999.999999', '0.000001'], '1000000000000']] as const)('of %j is %s', (values, sum) => {
    expect(tallied(values.map((value) => new Decimal(value))).toFixed()).toBe(sum);
  });
});

test('comparing says what the library says', () => {
  fc.assert(fc.property(numbers, (values) => {
    for (const a of values) for (const b of values) expect(Math.sign(compare(a, b))).toBe(a.comparedTo(b));
  }), { numRuns: 500 });
});

// Against the library's own reading of the same digits, and of what is worked out from them.
test('a number read from digits is the one that the library reads', () => {
  const digits = fc.oneof(fc.stringMatching(/^\d{1,12}(\.\d{1,6})?$/), fc.stringMatching(/^0{1,9}(\.0{0,6}[1-9]?\d{0,3})?\d$/), fc.constantFrom('0', '0.0', '00.10', '9999999', '10000000', '9999999.999999', '0.000001', '1.0000000', '100.00', '0.1234567'));
  fc.assert(fc.property(digits, digits, (a, b) => {
    const [read, known] = [decimalOf(a), new Decimal(a)];
    expect([read.s, read.e, read.d]).toEqual([known.s, known.e, known.d]);
    const other = new Decimal(b);
    expect([read.plus(other), read.times(other), read.minus(other), read.toDecimalPlaces(2)].map(String)).toEqual([known.plus(other), known.times(other), known.minus(other), known.toDecimalPlaces(2)].map(String));
  }), { numRuns: 5_000 });
});
