import { checkChance } from './curve.js';

/** How the equally likely cases of a figure are spread. */
export interface Spread {
  /** The cases from lowest to highest. */
  readonly sorted: Float64Array;
  readonly mean: number;
  /** Over the cases themselves: divided by their number. */
  readonly variance: number;
}

/** A column of cases. */
export type Column = Float64Array | Uint8Array | Uint16Array;

/** The spread of equally likely cases; at least one. Throws a RangeError where there is none or one is not a number. */
export function spreadOf(cases: Column): Spread {
  const mean = meanOf(cases);
  if (!Number.isFinite(mean)) throw new RangeError('A spread is wanted of finite cases, at least one.');
  const sorted = Float64Array.from(cases).sort();
  return { sorted, mean, variance: varianceOf(sorted, mean) };
}

/**
 * The amount that is not exceeded with chance p: between the cases next to p × cases + 1/2, in proportion; at the
 * ends the lowest or the highest case. The cases of one stratified variable give its quantiles at strata's middles
 * without error.
 *
 * Source: definition 5 of Hyndman & Fan, "Sample quantiles in statistical packages", American Statistician 50, 1996.
 */
export function quantileOf(sorted: Float64Array, p: number): number {
  checkChance(p);
  const last = sorted.length - 1;
  const at = Math.min(last, Math.max(0, p * sorted.length - 0.5));
  const below = Math.floor(at);
  const low = sorted[below] as number;
  const part = at - below;
  return part === 0 ? low : low + part * ((sorted[below + 1] as number) - low);
}

/** The mean of a column; NaN of none. Compensated, so that it is as exact as its cases (Neumaier, ZAMM 54, 1974). */
export function meanOf(cases: Column): number {
  let sum = 0;
  let lost = 0;
  for (let i = 0; i < cases.length; i++) {
    const value = cases[i] as number;
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return (sum + lost) / cases.length;
}

function varianceOf(cases: Column, mean: number): number {
  let squares = 0;
  for (let i = 0; i < cases.length; i++) {
    const off = (cases[i] as number) - mean;
    squares += off * off;
  }
  return squares / cases.length;
}
