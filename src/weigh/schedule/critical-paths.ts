/** The critical paths of a network, as far as they are listed, and how many there are in all. */
export interface CriticalPaths {
  /** Each from an activity without predecessors to one without successors, by index. */
  readonly paths: readonly (readonly number[])[];
  /** All of them, listed or not; exact up to 2⁵³. */
  readonly count: number;
}

/** How many critical paths are listed at most. */
export const MOST_PATHS = 64;

/**
 * Lists the paths along critical links, those through earlier activities of the table first.
 *
 * @param links for each activity the critical predecessors that end where it starts.
 * @param order the activities with predecessors first.
 * @param ends the critical activities without successors, in the order of the table.
 */
export function listCriticalPaths(links: readonly (readonly number[])[], order: Int32Array, ends: readonly number[]): CriticalPaths {
  const ways = new Float64Array(links.length);
  for (const i of order) {
    const before = links[i] as readonly number[];
    ways[i] = before.length === 0 ? 1 : before.reduce((sum, one) => sum + (ways[one] as number), 0);
  }
  const count = ends.reduce((sum, end) => sum + (ways[end] as number), 0);
  const paths: number[][] = [];
  for (const end of ends) {
    // Backwards from the end without recursion, since a path may be as long as the table.
    const path = [end];
    const turn = [0];
    while (path.length > 0 && paths.length < MOST_PATHS) {
      const before = links[path[path.length - 1] as number] as readonly number[];
      const next = before[turn[turn.length - 1] as number];
      if (before.length === 0) paths.push([...path].reverse());
      if (next === undefined) {
        path.pop();
        turn.pop();
      } else {
        (turn[turn.length - 1] as number)++;
        path.push(next);
        turn.push(0);
      }
    }
  }
  return { paths, count };
}
