import { waitEnd, type Layout } from './plan-task.js';

/** What precedence alone says about the tasks of a layout, as if there were technicians without end. */
export interface PrecedenceTimes {
  readonly earlyStart: Float64Array;
  readonly earlyEnd: Float64Array;
  /** At least this long from a task's end to the last end that counts; 0 for a task that does not count. */
  readonly tail: Float64Array;
  /** The late end and start with waits as long as they are in the earliest plan; exact without waits by the calendar. */
  readonly lateStart: Float64Array;
  readonly lateEnd: Float64Array;
  /** The critical path of the tasks that count. */
  readonly length: number;
}

export function precedenceTimes({ count, durations, endsAt, before, beforeFrom, ranked, isCounted, topological }: Layout): PrecedenceTimes {
  const earlyStart = new Float64Array(count);
  const earlyEnd = new Float64Array(count);
  let length = 0;
  let last = 0;
  for (const i of topological) {
    let start = 0;
    for (let k = beforeFrom[i] as number; k < (beforeFrom[i + 1] as number); k++) start = Math.max(start, earlyEnd[before[k] as number] as number);
    earlyStart[i] = start;
    const end = waitEnd(endsAt[i], start, durations[i] as number);
    earlyEnd[i] = end;
    last = Math.max(last, end);
    if (isCounted[i] === 1) length = Math.max(length, end);
  }
  const tail = new Float64Array(count);
  const lateStart = new Float64Array(count);
  const lateEnd = new Float64Array(count);
  for (const i of topological.toReversed()) {
    // What does not count is wanted after all that does.
    let end = isCounted[i] === 1 ? length : last;
    for (const next of ranked[i] as readonly number[]) {
      end = Math.min(end, lateStart[next] as number);
      // A wait by the calendar may be over as soon as it begins.
      const least = endsAt[next] === undefined ? (durations[next] as number) : 0;
      if (isCounted[next] === 1) tail[i] = Math.max(tail[i] as number, least + (tail[next] as number));
    }
    lateEnd[i] = end;
    lateStart[i] = end - ((earlyEnd[i] as number) - (earlyStart[i] as number));
  }
  return { earlyStart, earlyEnd, tail, lateStart, lateEnd, length };
}
