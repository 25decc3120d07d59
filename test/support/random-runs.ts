/** For tests of many cases: a busy machine must not fail them. */
export const PATIENT = { timeout: 60_000 };

/** A fixed row of cases, and a bound on how long a failing one is made smaller. */
export function runs(seed: number, numRuns: number) {
  return { seed, numRuns, interruptAfterTimeLimit: 30_000, markInterruptAsFailure: true };
}
