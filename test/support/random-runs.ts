/** A fixed row of cases, and a bound on how long a failing one is made smaller. */
export function runs(seed: number, numRuns: number) {
  return { seed, numRuns, interruptAfterTimeLimit: 15_000, markInterruptAsFailure: true };
}
