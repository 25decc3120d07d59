/** A duration estimated at three points: if all goes well, most likely, and if it goes badly. All equal for one figure. */
export interface ThreePoint {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/**
 * The mean of a three-point estimate, (a + 4m + b) / 6, in the unit of the points.
 * Source: Malcolm, Roseboom, Clark & Fazar, Operations Research 7(5), 1959. One figure comes back to the last bit.
 */
export function pertMean({ low, likely, high }: ThreePoint): number {
  return low === likely && high === likely ? likely : (low + 4 * likely + high) / 6;
}

/**
 * The variance of a three-point estimate by the same source, ((b − a) / 6)², in the square of the unit.
 * It is a convention: the beta-PERT distribution with these points has another variance.
 */
export function pertVariance({ low, high }: ThreePoint): number {
  const deviation = (high - low) / 6;
  return deviation * deviation;
}
