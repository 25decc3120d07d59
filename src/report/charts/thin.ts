/** A point of a distribution: this share of the cases comes to at most this value. */
export interface CurvePoint {
  readonly value: number;
  readonly share: number;
}

/**
 * The distribution of some cases in at most so many points, the first at the least case with nothing below it. Each
 * other point lies exactly on the distribution: its share of the cases is at most its value. The least and the
 * greatest case are always among them.
 *
 * @param cases in any order; left as they are.
 * @param most at least 3.
 */
export function thinned(cases: Float64Array, most: number): readonly CurvePoint[] {
  const sorted = cases.slice().sort();
  const count = sorted.length;
  const least = sorted[0];
  if (least === undefined) return [];
  const points: CurvePoint[] = [{ value: least, share: 0 }];
  const steps = Math.min(most - 2, count - 1);
  for (let k = 0; k <= steps; k++) {
    // Of equal values the last: only there the share is reached.
    let at = steps === 0 ? count - 1 : Math.round((k * (count - 1)) / steps);
    while (sorted[at + 1] === sorted[at]) at++;
    const point = { value: sorted[at] as number, share: (at + 1) / count };
    if (point.share > (points[points.length - 1] as CurvePoint).share) points.push(point);
  }
  return points;
}

/** The share of the cases that come to at most a value. */
export function shareUpTo(cases: Float64Array, value: number): number {
  let count = 0;
  for (const one of cases) if (one <= value) count++;
  return cases.length === 0 ? 0 : count / cases.length;
}
