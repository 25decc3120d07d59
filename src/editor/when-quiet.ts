/** A pause in typing; what is dear waits for one. */
const QUIET = 150;
/** Whoever types on and on sees it all the same. */
const LONGEST = 1_000;
/** Long enough for what was just sent to be painted first. */
const SOON = 30;

/** Runs something dear soon after it is asked for, but not between two keystrokes; the longer it takes, the less often. */
export class WhenQuiet {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private askedFirst = 0;
  private lastTook = 0;

  constructor(private readonly action: () => void) {}

  /** `first`: there is nothing to see of it yet. `again`: what there is may be kept a little longer. */
  ask(what: 'first' | 'again'): void {
    const now = performance.now();
    if (this.timer === undefined) this.askedFirst = now;
    else if (now - this.askedFirst > LONGEST) return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.run(), what === 'first' ? SOON : Math.max(QUIET, this.lastTook));
  }

  cancel(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
  }

  private run(): void {
    this.timer = undefined;
    const started = performance.now();
    this.action();
    this.lastTook = performance.now() - started;
  }
}
