/**
 * Lines that one line may rest on, through what it includes or needs and what these do in turn. A job of a shop has a
 * handful; a generated file could have every line rest on all others, or lead from one to the next without end.
 */
export const MOST_BEHIND = 40;

/** Some things and all behind them, each once. */
export function withBehind<T>(things: Iterable<T>, next: (one: T) => readonly T[]): ReadonlySet<T> {
  const all = new Set(things);
  // A set that grows while it is gone through is gone through to its end.
  for (const one of all) for (const behind of next(one)) all.add(behind);
  return all;
}
