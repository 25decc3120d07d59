import { type Beta, betaOf } from './beta.js';

/**
 * The quantiles of a beta distribution at the middles (i + 0.5)/cases of equal strata, rising; each within 1e-12 of
 * the exact one. Shared with everybody who asks for the same shape: not to be written to. The last 256 tables are
 * kept, by their exact parameters.
 */
export function betaStrata(alpha: number, beta: number, cases: number): Readonly<Float64Array> {
  const key = `${alpha} ${beta} ${cases}`;
  const before = kept.get(key);
  const table = before ?? workedOut(alpha, beta, cases);
  if (before !== undefined) kept.delete(key);
  else if (kept.size >= MOST_KEPT) kept.delete(kept.keys().next().value as string);
  kept.set(key, table);
  return table;
}

const MOST_KEPT = 256;
const kept = new Map<string, Float64Array>();

/** Each half from its own end, where the other end's numbers would cancel. */
function workedOut(alpha: number, beta: number, cases: number): Float64Array {
  const table = new Float64Array(cases);
  const middle = Math.ceil(cases / 2);
  const lower = betaOf(alpha, beta);
  const upper = betaOf(beta, alpha);
  march(lower, cases, middle, (i, x) => (table[i] = x));
  march(upper, cases, cases - middle, (i, x) => (table[cases - 1 - i] = 1 - x));
  return table;
}

/** The first `count` quantiles, each from the one before by the Taylor series of the quantile function, then exactly. */
function march(shape: Beta, cases: number, count: number, put: (i: number, x: number) => void): void {
  const { alpha, beta } = shape;
  let x = 0;
  for (let i = 0; i < count; i++) {
    const p = (i + 0.5) / cases;
    x = shape.quantile(p, i === 0 ? undefined : ahead());
    put(i, x);
  }

  function ahead(): number {
    const u = 1 / (cases * shape.density(x));
    const slope = (alpha - 1) / x - (beta - 1) / (1 - x);
    const turn = -(alpha - 1) / (x * x) - (beta - 1) / ((1 - x) * (1 - x));
    const guess = x + u * (1 - (u * slope) / 2 + (u * u * (2 * slope * slope - turn)) / 6);
    return guess > x && guess < 1 ? guess : x;
  }
}
