/** One thing that was timed: milliseconds of each round after warming up, by the clock and on the processors. */
export interface Measured {
  readonly label: string;
  readonly ms: readonly number[];
  /** On a machine that does other things too, what says more; collecting garbage and compiling are in it. */
  readonly processor: readonly number[];
}

/** Runs some work often; the first quarter of the rounds warms up and is not counted. */
export async function measure(label: string, rounds: number, work: (round: number) => unknown): Promise<Measured> {
  const ms: number[] = [];
  const processor: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const before = process.cpuUsage();
    const started = performance.now();
    await work(round);
    ms.push(performance.now() - started);
    const { user, system } = process.cpuUsage(before);
    processor.push((user + system) / 1000);
  }
  const from = Math.floor(rounds / 4);
  return { label, ms: ms.slice(from), processor: processor.slice(from) };
}

/** The value that this share of all is below. */
export function at(share: number, all: readonly number[]): number {
  const sorted = [...all].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? NaN;
}

export function inMs(ms: number): string {
  return `${ms.toFixed(2)} ms`;
}

export function row(label: string, ...cells: readonly string[]): string {
  return `${label.padEnd(52)}${cells.map((cell) => cell.padStart(14)).join('')}`;
}
