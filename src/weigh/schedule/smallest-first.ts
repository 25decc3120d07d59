/** Whole numbers of which the smallest is taken first: a binary heap (Williams, Communications of the ACM 7(6), 1964). */
export class SmallestFirst {
  private readonly heap: Int32Array;
  private count = 0;

  /** Holds at most so many at a time. */
  constructor(most: number) {
    this.heap = new Int32Array(most);
  }

  put(value: number): void {
    const { heap } = this;
    let at = this.count++;
    for (let above = (at - 1) >> 1; at > 0 && (heap[above] as number) > value; above = (at - 1) >> 1) {
      heap[at] = heap[above] as number;
      at = above;
    }
    heap[at] = value;
  }

  /** The smallest, which is then gone; only where there is one. */
  take(): number {
    const { heap } = this;
    const smallest = heap[0] as number;
    const last = heap[--this.count] as number;
    let at = 0;
    for (let below = 1; below < this.count; below = 2 * at + 1) {
      if (below + 1 < this.count && (heap[below + 1] as number) < (heap[below] as number)) below++;
      if ((heap[below] as number) >= last) break;
      heap[at] = heap[below] as number;
      at = below;
    }
    heap[at] = last;
    return smallest;
  }
}
