/** One frame of a screen: nobody sees more than one change in it. */
const FRAME = 16;
const LONGEST = 400;

/**
 * Runs an action for each key soon after it is asked for, once for however many times. An action that takes long is
 * run less often, so that typing in a very large estimate never waits for it.
 */
export class Coalesced<K> {
  private readonly waiting = new Map<K, ReturnType<typeof setTimeout>>();
  private lastTook = 0;

  constructor(private readonly action: (key: K) => Promise<void>) {}

  ask(key: K): void {
    if (this.waiting.has(key)) return;
    this.waiting.set(key, setTimeout(() => void this.run(key), Math.min(LONGEST, Math.max(FRAME, 2 * this.lastTook))));
  }

  cancel(key: K): void {
    clearTimeout(this.waiting.get(key));
    this.waiting.delete(key);
  }

  dispose(): void {
    for (const key of [...this.waiting.keys()]) this.cancel(key);
  }

  private async run(key: K): Promise<void> {
    this.waiting.delete(key);
    const started = performance.now();
    await this.action(key);
    this.lastTook = performance.now() - started;
  }
}
