/** Three points of an amount: low is at most likely, likely at most high. */
export interface ThreePoints {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** How an uncertain amount is spread over its range. */
export interface Curve {
  readonly low: number;
  readonly high: number;
  readonly mean: number;
  /** In the square of the amount's unit. */
  readonly variance: number;
  /** The chance of at most x. */
  readonly cdf: (x: number) => number;
  /** The amount that is not exceeded with chance p. Throws a RangeError for p outside 0 to 1. */
  readonly quantile: (p: number) => number;
  /** The quantiles at the middles (i + 0.5)/cases of `cases` equal strata, rising: what a stratified sample takes. */
  readonly strata: (cases: number) => Float64Array;
}

/** The spread of an amount that is certain. */
export function certain(at: number): Curve {
  return {
    low: at, high: at, mean: at, variance: 0,
    cdf: (x) => (x >= at ? 1 : 0),
    quantile: (p) => (checkChance(p), at),
    strata: (cases) => new Float64Array(cases).fill(at),
  };
}

/** Throws a RangeError where points are out of order or not finite. */
export function checkPoints({ low, likely, high }: ThreePoints): void {
  if (!(low <= likely && likely <= high && Number.isFinite(low) && Number.isFinite(high - low))) throw new RangeError(`Three points rise from low over likely to high, unlike ${low}, ${likely}, ${high}.`);
}

/** Throws a RangeError where p is no chance. */
export function checkChance(p: number): void {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`A chance lies from 0 to 1, not at ${p}.`);
}
