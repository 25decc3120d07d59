/**
 * How far the mean of a stratified sample may lie from the true one, for a sum of terms that each rise or fall with
 * one variable: no farther than this, whatever the seed. `ranges` are the terms' highest less lowest values; a yes/no
 * chance of a fixed amount has that amount. In a stratum the middle lies from the stratum's mean at most half of what
 * the term rises there; over all strata that is half the range, of which each case weighs 1/cases.
 *
 * It does not hold for products of variables (an uncertain amount that may or may not come): their error is that of
 * chance pairing, about the standard deviation of what is no sum of single terms, divided by the root of cases.
 *
 * Source: the rectangle rule for monotone functions; for products Stein, Technometrics 29(2), 1987.
 */
export function meanErrorBound(ranges: ArrayLike<number>, cases: number): number {
  let sum = 0;
  for (let i = 0; i < ranges.length; i++) sum += Math.abs(ranges[i] as number);
  return sum / (2 * cases);
}

/**
 * The standard error of a share that was found in `cases` cases, as if they had been drawn without strata: a guide
 * from above, since strata only take spread away (for shares that grow with each variable).
 *
 * Source: the binomial distribution; McKay, Beckman & Conover, Technometrics 21(2), 1979.
 */
export function shareError(share: number, cases: number): number {
  return Math.sqrt((share * (1 - share)) / cases);
}
