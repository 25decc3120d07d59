/** One thing that was timed: milliseconds of each round after warming up. */
export interface Measured {
  readonly label: string;
  readonly ms: readonly number[];
}

/** Runs some work often; the first quarter of the rounds warms up and is not counted. */
export async function measure(label: string, rounds: number, work: (round: number) => unknown): Promise<Measured> {
  const ms: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const started = performance.now();
    await work(round);
    ms.push(performance.now() - started);
  }
  return { label, ms: ms.slice(Math.floor(rounds / 4)) };
}

export function row(label: string, ...cells: readonly string[]): string {
  return `${label.padEnd(52)}${cells.map((cell) => cell.padStart(12)).join('')}`;
}
