import { type Column, meanOf } from './spread.js';

/**
 * What share of the spread of `output` goes with each input: the squared linear correlation, 0 to 1. Where the output
 * is a sum of independent inputs, as a total is, that is the share of its variance that would go if the input were
 * known, and all shares add up to about 1; what is missing is in products of inputs. An input that goes with others
 * (a chance that needs another to happen first) has its part of theirs too. A column that does not vary has share 0.
 * All columns have one length.
 *
 * A sample's correlations are off by about 1/√cases: shares below `noise(cases)` can't be told from nothing.
 *
 * Source: Saltelli, Ratto et al., Global Sensitivity Analysis: The Primer, ch. 1 (linear correlation and regression
 * measures; for a linear model the squares are the first-order shares of variance).
 */
export function contributions(output: Float64Array, inputs: readonly Column[]): Float64Array {
  // Taken from its first case first: an output that does not vary gives exactly nothing.
  const off = output.map((value) => value - (output[0] as number));
  const mean = meanOf(off);
  let squares = 0;
  for (let i = 0; i < off.length; i++) {
    const one = (off[i] as number) - mean;
    off[i] = one;
    squares += one * one;
  }
  const shares = new Float64Array(inputs.length);
  inputs.forEach((input, k) => (shares[k] = squaredCorrelation(off, squares, input)));
  return shares;
}

/** The share below which an input's is not to be told from nothing: two standard errors of a correlation, squared. */
export function noise(cases: number): number {
  return Math.min(1, 4 / cases);
}

/** Of a column less its mean, with the sum of its squares, and another. */
function squaredCorrelation(off: Float64Array, squares: number, input: Column): number {
  // Taken from its first case rather than its mean: one pass, and one that does not vary gives exactly nothing.
  const from = input[0] as number;
  let sum = 0;
  let own = 0;
  let both = 0;
  for (let i = 0; i < off.length; i++) {
    const one = (input[i] as number) - from;
    sum += one;
    own += one * one;
    both += one * (off[i] as number);
  }
  const spread = own - (sum * sum) / off.length;
  return spread > own * 1e-12 && squares > 0 ? Math.min(1, (both / squares) * (both / spread)) : 0;
}
