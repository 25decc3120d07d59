// Against decimal.js itself: what it reads of the same digits.
import { describe, expect, test } from 'vitest';
import { decimalOf } from '../../src/vocabulary/decimal.js';
import { Decimal } from '../../src/vocabulary/index.js';

describe('a number is the one that the library reads', () => {
  // Seven digits on either side of the point are read quickly; more of them are the library's.
  test.each([
    '0', '0.0', '00.10', '1', '9', '10', '007', '64.30', '0.5', '0.05', '0.000001', '0.0000001', '0.00000001', '1.0000000', '1.00000001', '100.00', '1234567', '9999999', '10000000', '12345678', '12345678.5', '9999999.9999999',
    '9999999.99999999', '123456789012', '123456789012.123456', '0.1234567', '0.12345678', '1.5', '10.01', '1000000.000001', '.5',
  ])('%s', (digits) => {
    const [read, known] = [decimalOf(digits), new Decimal(digits)];
    expect(read.toFixed()).toBe(known.toFixed());
    expect([read.d, read.e, read.s]).toEqual([known.d, known.e, known.s]);
    expect(read.times('1.07').plus('0.005').toFixed()).toBe(known.times('1.07').plus('0.005').toFixed());
  });
});
