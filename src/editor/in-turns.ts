/** Whoever types waits no longer than this for his turn, in ms, beyond the file that is worked on just then. */
const TURN = 10;

/**
 * Goes through many files, so many `together`, and lets others have their turn in between. `tell` is told how many are
 * done. What one of them throws is given to `failed`, and stops none of the others.
 */
export async function inTurns<T>(all: readonly T[], together: number, { work, tell, failed }: {
  readonly work: (one: T) => Promise<void>;
  readonly tell: (done: number) => void;
  readonly failed: (one: T, error: unknown) => void;
}): Promise<void> {
  let turned = performance.now();
  for (let done = 0; done < all.length;) {
    const some = all.slice(done, done + together);
    await Promise.all(some.map(async (one) => {
      try {
        await work(one);
      } catch (error) {
        failed(one, error);
      }
    }));
    done += some.length;
    tell(done);
    if (performance.now() - turned < TURN) continue;
    await new Promise((resolve) => setTimeout(resolve, 0));
    turned = performance.now();
  }
}
