import { Decimal as Library } from 'decimal.js';

/**
 * The one Decimal of the product. A written figure has at most 18 digits (12 before the point, 6 after), so that the
 * product of quantity, cost and markup has at most 57; 60 hold it without loss. Only minutes are divided, last.
 */
export const Decimal = Library.clone({ precision: 60, rounding: Library.ROUND_HALF_UP, toExpNeg: -40, toExpPos: 40 });
export type Decimal = Library;

export const zero = new Decimal(0);
export const one = new Decimal(1);
export const hundred = new Decimal(100);
/** To multiply with where a percentage is taken: exact, and quicker than to divide. */
export const hundredth = new Decimal('0.01');

/** The library keeps the digits of a number by sevens, from the point on to both sides. */
const WORD = 7;

/**
 * The number that `new Decimal` makes of digits, with a point between two of them or without, the sooner for what is
 * written most: few digits on either side. A long file has ten thousand of them, and the library reads each for every
 * form it knows.
 */
export function decimalOf(digits: string): Decimal {
  const point = digits.indexOf('.');
  const whole = point < 0 ? digits.length : point;
  const decimals = point < 0 ? 0 : digits.length - point - 1;
  if (whole === 0 || whole > WORD || decimals > WORD) return new Decimal(digits);
  const above = valueOf(digits, 0, whole, whole);
  const below = decimals === 0 ? 0 : valueOf(digits, whole + 1, WORD, decimals);
  return ofWords(above, below);
}

/** The number with these seven digits before the point and these seven behind it, as the library keeps it. */
export function ofWords(above: number, below: number): Decimal {
  const made = new Decimal(above === 0 ? below : above) as { -readonly [of in 'd' | 'e']: Decimal[of] };
  if (above !== 0 && below !== 0) made.d = [above, below];
  if (above === 0 && below !== 0) made.e -= WORD;
  return made as Decimal;
}

/** So many digits from a place on as a number, filled up with noughts where there are fewer. */
function valueOf(digits: string, from: number, count: number, written: number): number {
  let value = 0;
  for (let i = 0; i < count; i++) value = 10 * value + (i < written ? digits.charCodeAt(from + i) - 48 : 0);
  return value;
}
