import { waitEnd, type Layout } from './plan-task.js';
import { Usage } from './usage.js';

/**
 * Serial schedule generation: takes tasks in the order of a list and starts each as early as its predecessors and
 * the technicians allow, in a gap that was left where it fits. (Kolisch, European Journal of Operational Research 90,
 * 1996; from memory.) Work of no length, and not-a-number, holds nobody.
 */
export class SerialGeneration {
  readonly starts: Float64Array;
  readonly ends: Float64Array;
  private readonly usage: Usage;

  constructor(private readonly layout: Layout) {
    this.starts = new Float64Array(layout.count);
    this.ends = new Float64Array(layout.count);
    this.usage = new Usage(layout.technicians, layout.count);
  }

  /**
   * Fills `starts` and `ends` and gives the last end of the tasks that count. Allocates nothing.
   *
   * @param order each task once at most, predecessors first.
   * @param durations for each task of the layout, in its order.
   */
  run(order: Int32Array, durations: Float64Array): number {
    const { before, beforeFrom, isWork, isCounted, endsAt } = this.layout;
    const { starts, ends, usage } = this;
    usage.clear();
    let makespan = 0;
    for (let at = 0; at < order.length; at++) {
      const i = order[at] as number;
      const duration = durations[i] as number;
      let start = 0;
      const until = beforeFrom[i + 1] as number;
      for (let k = beforeFrom[i] as number; k < until; k++) {
        const ready = ends[before[k] as number] as number;
        if (ready > start) start = ready;
      }
      let end: number;
      if (isWork[i] === 1 && duration > 0) {
        start = usage.earliest(start, duration);
        end = start + duration;
        usage.occupy(start, end);
      } else {
        end = waitEnd(endsAt[i], start, duration);
      }
      starts[i] = start;
      ends[i] = end;
      if (end > makespan && isCounted[i] === 1) makespan = end;
    }
    return makespan;
  }
}
