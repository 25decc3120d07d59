/** More changed lines than this are no typing, and everything is made anew. */
const FEW = 8;

/** The places at which two lists differ; undefined where they are more than a few, or the lists are not as long. */
export function changedSince(before: readonly unknown[], now: readonly unknown[]): readonly number[] | undefined {
  if (before.length !== now.length) return undefined;
  const changed: number[] = [];
  for (let i = 0; i < now.length; i++) {
    if (before[i] === now[i]) continue;
    if (changed.length === FEW) return undefined;
    changed.push(i);
  }
  return changed;
}
