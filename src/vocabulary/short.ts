import { Decimal, ofWords } from './decimal.js';

/** The library keeps the digits of a number by sevens, from the point on to both sides; short is what has at most one seven on either side. */
const WORD = 10_000_000;
const DIGITS = 7;
const HUNDREDTH = WORD / 100;

/**
 * What the library's `times` gives, to the digit. Money and hours have two digits behind the point and a few before it, so
 * that their product in hundredths of hundredths is a whole number that a float holds exactly. All else is left to the library.
 */
export function times(a: Decimal, b: Decimal): Decimal {
  const [x, y] = [hundredths(a), hundredths(b)];
  const product = x * y;
  if (x < 0 || y < 0 || product >= 10_000 * WORD) return a.times(b);
  const above = Math.floor(product / 10_000);
  return ofWords(above, (product - above * 10_000) * (WORD / 10_000));
}

/** A short number in hundredths; less than nothing where it is none, or has more digits. */
function hundredths(value: Decimal): number {
  if (!isShort(value)) return -1;
  const below = behindPoint(value) / HUNDREDTH;
  return Number.isInteger(below) ? 100 * beforePoint(value) + below : -1;
}

/** What the library's `toDecimalPlaces` gives, rounding halves in one of the three ways by which money is rounded. */
export function roundedTo(value: Decimal, places: number, mode: 4 | 5 | 6): Decimal {
  if (!isShort(value) || places > DIGITS) return value.toDecimalPlaces(places, mode);
  const [before, behind] = [beforePoint(value), behindPoint(value)];
  const unit = 10 ** (DIGITS - places);
  const kept = Math.floor(behind / unit);
  const twice = 2 * (behind - kept * unit);
  if (twice === 0) return value;
  const isOdd = (places === 0 ? before : kept) % 2 === 1;
  const up = twice > unit || (twice === unit && (mode === Decimal.ROUND_HALF_UP || (mode === Decimal.ROUND_HALF_EVEN && isOdd)));
  const rounded = (up ? kept + 1 : kept) * unit;
  if (rounded < WORD) return ofWords(before, rounded);
  return before + 1 < WORD ? ofWords(before + 1, 0) : value.toDecimalPlaces(places, mode);
}

/**
 * What the library's `toNumber` gives, which goes through a text: the nearest float. So does one division of two whole numbers
 * that floats hold exactly (IEEE 754: a division is rounded once, to the nearest).
 */
export function numberOf(value: Decimal): number {
  return isShort(value) ? (beforePoint(value) * WORD + behindPoint(value)) / WORD : value.toNumber();
}

/** Not negative, and at most seven digits on either side of the point. */
function isShort({ d, e, s }: Decimal): boolean {
  return s === 1 && e < DIGITS && (e >= 0 ? d.length <= 2 : e >= -DIGITS && d.length === 1);
}

function beforePoint({ d, e }: Decimal): number {
  return e >= 0 ? (d[0] as number) : 0;
}

function behindPoint({ d, e }: Decimal): number {
  return (e >= 0 ? d[1] : d[0]) ?? 0;
}
