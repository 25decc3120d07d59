import type { Diagnostic } from '../../service/index.js';

/**
 * What is wrong in the files of the open estimates, each problem in the file where it is, also in shared files that are
 * not open. What two estimates find in a file they share is told once.
 */
export class Problems {
  private readonly byEstimate = new Map<string, ReadonlyMap<string, readonly Diagnostic[]>>();

  constructor(private readonly publish: (file: string, problems: readonly Diagnostic[]) => void) {}

  /** What an estimate finds in its files; undefined where it was closed. */
  put(estimate: string, files: ReadonlyMap<string, readonly Diagnostic[]> | undefined): void {
    const before = this.byEstimate.get(estimate);
    if (files === undefined) this.byEstimate.delete(estimate);
    else this.byEstimate.set(estimate, files);
    for (const file of new Set([estimate, ...(before?.keys() ?? []), ...(files?.keys() ?? [])])) this.publish(file, this.in(file));
  }

  private in(file: string): readonly Diagnostic[] {
    const found = new Map<string, Diagnostic>();
    for (const files of this.byEstimate.values()) {
      for (const one of files.get(file) ?? []) found.set(`${one.code} ${one.range.start} ${one.range.end}`, one);
    }
    return [...found.values()];
  }
}
