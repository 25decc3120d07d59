/** A fraction of whole numbers; the denominator is above 0. The pages' sums are done again with these, without any library. */
export interface Fraction {
  readonly over: bigint;
  readonly under: bigint;
}

/** Numbers with thousands commas, + - × / ^, parentheses; the usual order, and from left to right. */
export function calculated(text: string): Fraction {
  const tokens = text.match(/[\d,]+(?:\.\d+)?|[-+×/^()]/g) ?? [];
  if (tokens.join('') !== text.replace(/\s/g, '')) throw new Error(`Not a sum: ${text}`);
  let at = 0;
  const value = sum();
  if (at < tokens.length) throw new Error(`${tokens[at] ?? ''} is too much in ${text}`);
  return value;

  function sum(): Fraction {
    let left = product();
    while (tokens[at] === '+' || tokens[at] === '-') left = tokens[at++] === '+' ? plus(left, product()) : plus(left, times(fraction('-1'), product()));
    return left;
  }

  function product(): Fraction {
    let left = power();
    while (tokens[at] === '×' || tokens[at] === '/') left = tokens[at++] === '×' ? times(left, power()) : times(left, inverse(power()));
    return left;
  }

  function power(): Fraction {
    const base = single();
    if (tokens[at] !== '^') return base;
    at++;
    const { over, under } = single();
    return { over: base.over ** (over / under), under: base.under ** (over / under) };
  }

  function single(): Fraction {
    const token = tokens[at++] ?? '';
    if (token !== '(') return fraction(token);
    const inside = sum();
    if (tokens[at++] !== ')') throw new Error(`A ) is missing in ${text}`);
    return inside;
  }
}

export function fraction(text: string): Fraction {
  if (!/^[-\d]/.test(text)) throw new Error(`Not a number: ${text}`);
  const [whole = '', decimals = ''] = text.replaceAll(',', '').split('.');
  return { over: BigInt(whole + decimals), under: 10n ** BigInt(decimals.length) };
}

/** With so many decimals, half up; for 0 and above. */
export function rounded({ over, under }: Fraction, decimals: number): string {
  const digits = ((over * 10n ** BigInt(decimals) * 2n + under) / (under * 2n)).toString().padStart(decimals + 1, '0');
  return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

function plus(a: Fraction, b: Fraction): Fraction {
  return { over: a.over * b.under + b.over * a.under, under: a.under * b.under };
}

function times(a: Fraction, b: Fraction): Fraction {
  return { over: a.over * b.over, under: a.under * b.under };
}

function inverse({ over, under }: Fraction): Fraction {
  if (over <= 0n) throw new Error('Divided by nothing.');
  return { over: under, under: over };
}
