import { sameProblem } from './diagnostics.js';
import type { Diagnostic } from './types.js';

/**
 * What is wrong in the files of the estimates that are worked on, each problem in the file where it is, also in shared
 * files that are not open themselves. What two estimates find in a file they share is there once.
 */
export class ProblemsByFile {
  private readonly byEstimate = new Map<string, ReadonlyMap<string, readonly Diagnostic[]>>();

  /** Takes what an estimate finds in its files; undefined where nobody works on it any more. Answers with the files that may say something else now. */
  put(estimate: string, files: ReadonlyMap<string, readonly Diagnostic[]> | undefined): readonly string[] {
    const before = this.byEstimate.get(estimate);
    if (files === undefined) this.byEstimate.delete(estimate);
    else this.byEstimate.set(estimate, files);
    return [...new Set([...(before?.keys() ?? []), ...(files?.keys() ?? [])])];
  }

  in(file: string): readonly Diagnostic[] {
    const found = new Map<string, Diagnostic>();
    for (const files of this.byEstimate.values()) for (const one of files.get(file) ?? []) found.set(sameProblem(one), one);
    return [...found.values()];
  }
}
