import { Decimal } from './decimal.js';

/** The library keeps digits by sevens: a word of a number is worth 10 to the seventh as much as the next one. */
const DIGITS = 7;
const BASE = 10_000_000;
/** Words before and after the point that are added up here. */
const WHOLE = 4;
const WORDS = 7;

/**
 * Adds up many numbers, exactly and quicker than one by one: a keystroke in a long file adds up thousands. Gives what
 * `plus` gives for the same numbers in the same order, to the digit; numbers with more digits than fit here are left to it.
 */
export class Tally {
  private readonly words: number[] = [0, 0, 0, 0, 0, 0, 0];
  private long: Decimal | undefined;

  add(value: Decimal): void {
    const { d, e, s } = value;
    // Nearly all money and hours: at most one word before the point, and one behind it.
    if (this.long === undefined && e >= 0 && e < DIGITS && d.length <= 2) {
      (this.words[WHOLE - 1] as number) += s * (d[0] as number);
      if (d.length === 2) (this.words[WHOLE] as number) += s * (d[1] as number);
      return;
    }
    const first = WHOLE - 1 - Math.floor(e / DIGITS);
    if (this.long !== undefined || first < 0 || first + d.length > WORDS) {
      this.long = (this.long ?? this.short()).plus(value);
      return;
    }
    for (let i = 0; i < d.length; i++) (this.words[first + i] as number) += s * (d[i] as number);
  }

  total(): Decimal {
    return this.long ?? this.short();
  }

  private short(): Decimal {
    const digits = digitsOf(this.words, 1);
    return new Decimal(digits.startsWith('-') ? `-${digitsOf(this.words, -1)}` : digits);
  }
}

/** Words of either sign as one number, times `sign`; where that is negative, no more than its first character is right. */
function digitsOf(words: readonly number[], sign: 1 | -1): string {
  let digits = '';
  let carried = 0;
  let first = 0;
  let last = WORDS - 1;
  while (words[first] === 0 && first < WHOLE - 1) first++;
  while (words[last] === 0 && last > WHOLE - 1) last--;
  for (let i = last; i >= first; i--) {
    const word = sign * (words[i] as number) + carried;
    carried = Math.floor(word / BASE);
    digits = `${String(word - carried * BASE).padStart(DIGITS, '0')}${i === WHOLE - 1 ? '.' : ''}${digits}`;
  }
  return `${carried}${digits}`;
}

/** Which of two numbers is greater, as the library's `comparedTo` says it, without a copy of the second. Both are finite. */
export function compare(a: Decimal, b: Decimal): number {
  const [x, y] = [a.d, b.d];
  if (x[0] === 0 || y[0] === 0) return x[0] !== 0 ? a.s : y[0] === 0 ? 0 : -b.s;
  if (a.s !== b.s) return a.s;
  if (a.e !== b.e) return a.e > b.e ? a.s : -a.s;
  const shared = Math.min(x.length, y.length);
  for (let i = 0; i < shared; i++) if (x[i] !== y[i]) return (x[i] as number) > (y[i] as number) ? a.s : -a.s;
  return x.length === y.length ? 0 : x.length > y.length ? a.s : -a.s;
}
