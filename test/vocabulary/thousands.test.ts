import { describe, expect, test } from 'vitest';
import { bothReadings, mayDivideThousands } from '../../src/vocabulary/index.js';

// A point before exactly three digits divides thousands in some countries and is a decimal sign in others: the SI Brochure (9th edition, 5.4.4, from
// memory) groups digits by threes with a space for that reason, and writes neither points nor commas between the groups.

describe('a point that may divide thousands', () => {
  test.each(['1.250', '12.500', '999.999', '1.000', '1.250 USD', '$1.250', '900.00 / 1.250 / 1400.00'])('%s', (written) => {
    expect(mayDivideThousands(written)).toBe(true);
  });

  // No thousands are written so: a nought in front, not three digits behind, more than three in front, more than one point.
  test.each(['0.250', '012.500', '1.25', '1.2', '1.2500', '1250.000', '1.250.000', '1250', '.250', '1. 250', 'a.250'])('no: %s', (written) => {
    expect(mayDivideThousands(written)).toBe(false);
  });
});

describe('figures that can be read in two ways, written so that each has one', () => {
  test('as thousands without a point, as decimals with two or four digits', () => {
    expect(bothReadings('1.250')).toEqual({ thousands: '1250', decimals: '1.25' });
    expect(bothReadings('12.505')).toEqual({ thousands: '12505', decimals: '12.5050' });
    expect(bothReadings('1.000')).toEqual({ thousands: '1000', decimals: '1.00' });
  });

  test('all of a line, and what stands around them is left', () => {
    expect(bothReadings('900.00 / 1.250 / 1.405 USD')).toEqual({ thousands: '900.00 / 1250 / 1405 USD', decimals: '900.00 / 1.25 / 1.4050 USD' });
    expect(bothReadings('0.250 / 1250.000 / 1.250.000')).toEqual({ thousands: '0.250 / 1250.000 / 1.250.000', decimals: '0.250 / 1250.000 / 1.250.000' });
  });

  test.each(['1.250', '12.505', '999.990', '1.000'])('neither can be read in two ways again, and both keep the value that they are for: %s', (written) => {
    const { thousands, decimals } = bothReadings(written);
    expect([mayDivideThousands(thousands), mayDivideThousands(decimals)]).toEqual([false, false]);
    expect([Number(thousands), Number(decimals)]).toEqual([Math.round(Number(written) * 1000), Number(written)]);
  });
});
