/** Tasks in an order in which each comes after all that it waits for, or a circle that forbids any such order. */
export type Ordering =
  | { readonly kind: 'ordered'; readonly order: Int32Array }
  /** Each comes after the one before it, and the first after the last; the lowest index stands first. */
  | { readonly kind: 'circle'; readonly circle: readonly number[] };

/**
 * Orders tasks by what they wait for (Kahn, Communications of the ACM 5(11), 1962), as early in the table as possible.
 *
 * @param after for each task the indexes of its predecessors, each a task of the table; duplicates do no harm.
 * @param successors the same seen from the other end.
 */
export function topologicalOrder(after: readonly (readonly number[])[], successors: readonly (readonly number[])[] = successorsOf(after)): Ordering {
  const count = after.length;
  const missing = Int32Array.from(after, (before) => before.length);
  const order = new Int32Array(count);
  let placed = 0;
  for (let i = 0; i < count; i++) if (missing[i] === 0) order[placed++] = i;
  for (let at = 0; at < placed; at++) {
    for (const next of successors[order[at] as number] as readonly number[]) {
      if (--(missing[next] as number) === 0) order[placed++] = next;
    }
  }
  return placed === count ? { kind: 'ordered', order } : { kind: 'circle', circle: circleIn(after, missing) };
}

/** For each task those that wait for it, in the order of the table. */
export function successorsOf(after: readonly (readonly number[])[]): number[][] {
  const successors = after.map((): number[] => []);
  after.forEach((before, i) => {
    for (const one of before) (successors[one] as number[]).push(i);
  });
  return successors;
}

/** Every task that was not placed waits for one that was not: going back from any of them ends in a circle. */
function circleIn(after: readonly (readonly number[])[], missing: Int32Array): number[] {
  const seenAt = new Map<number, number>();
  const trail: number[] = [];
  let here = missing.findIndex((left) => left > 0);
  while (!seenAt.has(here)) {
    seenAt.set(here, trail.length);
    trail.push(here);
    here = (after[here] as readonly number[]).find((one) => (missing[one] as number) > 0) as number;
  }
  const circle = trail.slice(seenAt.get(here)).reverse();
  const lowest = circle.indexOf(Math.min(...circle));
  return [...circle.slice(lowest), ...circle.slice(0, lowest)];
}
