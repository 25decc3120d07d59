/** Items by a key, in the order in which the keys come. Node 20 has no `Map.groupBy`. */
export function grouped<T>(all: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const found = new Map<string, T[]>();
  for (const one of all) {
    const before = found.get(keyOf(one));
    if (before === undefined) found.set(keyOf(one), [one]);
    else before.push(one);
  }
  return found;
}
