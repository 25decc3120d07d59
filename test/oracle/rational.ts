/** Exact fractions of whole numbers of any size. `d` is above 0. Nothing here comes from the product. */
export interface Rational {
  readonly n: bigint;
  readonly d: bigint;
}

export type Rounding = 'half-up' | 'half-even' | 'half-down';

export const nothing: Rational = { n: 0n, d: 1n };

export function whole(n: bigint): Rational {
  return { n, d: 1n };
}

/** `12.50` as 1250/100. */
export function fromDigits(text: string): Rational {
  const found = /^(-?)(\d+)(?:\.(\d+))?$/.exec(text);
  if (found === null) throw new Error(`not plain digits: ${text}`);
  const [, sign = '', before = '', after = ''] = found;
  return { n: BigInt(`${sign}${before}${after}`), d: 10n ** BigInt(after.length) };
}

export function plus(a: Rational, b: Rational): Rational {
  return a.d === b.d ? { n: a.n + b.n, d: a.d } : { n: a.n * b.d + b.n * a.d, d: a.d * b.d };
}

export function minus(a: Rational, b: Rational): Rational {
  return plus(a, { n: -b.n, d: b.d });
}

export function times(a: Rational, b: Rational): Rational {
  return { n: a.n * b.n, d: a.d * b.d };
}

export function per(a: Rational, divisor: bigint): Rational {
  return { n: a.n, d: a.d * divisor };
}

export function compare(a: Rational, b: Rational): number {
  const left = a.n * b.d;
  const right = b.n * a.d;
  return left < right ? -1 : left > right ? 1 : 0;
}

/** In whole steps of 10^-digits, rounded once; away from zero, to even or towards zero where it is half way. */
export function rounded(value: Rational, digits: number, rounding: Rounding): bigint {
  const negative = value.n < 0n;
  const scaled = (negative ? -value.n : value.n) * 10n ** BigInt(digits);
  const floor = scaled / value.d;
  const twice = 2n * (scaled - floor * value.d);
  const up = twice > value.d || (twice === value.d && (rounding === 'half-up' || (rounding === 'half-even' && floor % 2n === 1n)));
  const steps = up ? floor + 1n : floor;
  return negative ? -steps : steps;
}
