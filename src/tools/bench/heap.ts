const { gc } = globalThis as { readonly gc?: () => void };

/** Whether garbage can be collected before the heap is looked at: run node with --expose-gc. */
export const collects = gc !== undefined;

/** Megabytes in use. */
export function heap(): number {
  // Twice: what the first run lets go of may hold more.
  gc?.();
  gc?.();
  return process.memoryUsage().heapUsed / 1_000_000;
}
