/**
 * Whether a number can be a duration here: from nothing up to a stated most, in hours of working time or any other
 * unit. Beyond that a sum of durations could overflow, and a difference of two such sums is not a number.
 */
export function isDuration(value: number): boolean {
  return value >= 0 && value <= LONGEST;
}

/** The longest duration that is planned with. */
export const LONGEST = 1e15;

/**
 * Two moments are the same when they differ by less than this share of the finish. Sums of decimal fractions
 * (0.1 + 0.2) differ in their last bits with the path they are added along; such noise is no slack.
 */
export const TOLERANCE = 1e-9;
