/**
 * How many technicians are busy over time, as a staircase: from `times[k]` up to `times[k + 1]` there are `busy[k]`;
 * neighbours differ, the first step begins at 0, and the last has nobody busy and goes on for ever.
 * Made once and filled again and again: nothing is allocated after the constructor.
 */
export class Usage {
  private readonly times: Float64Array;
  private readonly busy: Int32Array;
  private steps = 1;

  /** @param most how many pieces of work are occupied at most between two calls of `clear`. */
  constructor(private readonly technicians: number, most: number) {
    // Occupying a piece adds two steps at most, and both are there before equal neighbours are joined.
    this.times = new Float64Array(2 * most + 3);
    this.busy = new Int32Array(2 * most + 3);
  }

  clear(): void {
    this.steps = 1;
    this.busy[0] = 0;
  }

  copy(other: Usage): void {
    this.steps = other.steps;
    for (let k = 0; k < other.steps; k++) {
      this.times[k] = other.times[k] as number;
      this.busy[k] = other.busy[k] as number;
    }
  }

  /** The earliest moment from `from` on at which some technician is free for that long without a break. */
  earliest(from: number, duration: number): number {
    const { times, busy, steps, technicians } = this;
    let k = steps - 1;
    while (k > 0 && (times[k] as number) > from) k--;
    let start = from;
    for (;;) {
      while ((busy[k] as number) >= technicians) start = times[++k] as number;
      const end = start + duration;
      do k++; while (k < steps && (times[k] as number) < end && (busy[k] as number) < technicians);
      if (k >= steps || (times[k] as number) >= end) return start;
    }
  }

  /** Makes one more technician busy between two moments. */
  occupy(start: number, end: number): void {
    if (!(start < end)) return;
    const { busy } = this;
    const first = this.cut(start);
    const last = this.cut(end);
    for (let k = first; k < last; k++) (busy[k] as number)++;
    this.join(last);
    this.join(first);
  }

  /** The moment by which so much work fits in from `from` on, if it could be cut up at will. */
  fitted(from: number, work: number): number {
    const { times, busy, steps, technicians } = this;
    let k = steps - 1;
    while (k > 0 && (times[k] as number) > from) k--;
    let now = from;
    let left = work;
    for (; k < steps - 1; k++) {
      const free = technicians - (busy[k] as number);
      const room = free > 0 ? ((times[k + 1] as number) - now) * free : 0;
      if (room >= left) return now + left / free;
      left -= room;
      now = times[k + 1] as number;
    }
    return now + left / technicians;
  }

  /** The step that begins at a moment; made where there is none. */
  private cut(moment: number): number {
    const { times, busy } = this;
    let k = this.steps - 1;
    while ((times[k] as number) > moment) k--;
    if (times[k] === moment) return k;
    for (let i = this.steps++; i > k + 1; i--) {
      times[i] = times[i - 1] as number;
      busy[i] = busy[i - 1] as number;
    }
    times[k + 1] = moment;
    busy[k + 1] = busy[k] as number;
    return k + 1;
  }

  /** Joins a step to the one before it where they do not differ. */
  private join(k: number): void {
    const { times, busy } = this;
    if (k === 0 || busy[k] !== busy[k - 1]) return;
    this.steps--;
    for (let i = k; i < this.steps; i++) {
      times[i] = times[i + 1] as number;
      busy[i] = busy[i + 1] as number;
    }
  }
}
