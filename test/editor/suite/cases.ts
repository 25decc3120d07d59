// A named case that passes when its promise fulfils.
export interface Case {
  readonly name: string;
  readonly run: () => Promise<void>;
}

export interface Outcome {
  readonly passed: number;
  readonly failed: number;
}

/** Runs cases one after the other; a case that fails is told and does not stop the others. */
export async function runCases(of: string, cases: readonly Case[], log: (line: string) => void, onFail?: (name: string) => Promise<void>): Promise<Outcome> {
  let failed = 0;
  for (const { name, run } of cases) {
    const started = Date.now();
    try {
      await run();
      log(`ok    ${of}: ${name} (${((Date.now() - started) / 1000).toFixed(1)} s)`);
    } catch (error) {
      failed++;
      log(`FAIL  ${of}: ${name}\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
      await onFail?.(name);
    }
  }
  return { passed: cases.length - failed, failed };
}
