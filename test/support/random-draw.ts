/**
 * A row of random numbers that is used up from the front. Nothing left means 0 everywhere, and 0 always stands for
 * the plainest choice, so that fast-check shrinks a row to a short and plain text.
 */
export class Draw {
  private at = 0;

  constructor(private readonly numbers: readonly number[]) {}

  /** A whole number from 0 to `most`. */
  upTo(most: number): number {
    return (this.numbers[this.at++] ?? 0) % (most + 1);
  }

  between(least: number, most: number): number {
    return least + this.upTo(most - least);
  }

  /** True in about so many of a hundred draws. */
  chance(percent: number): boolean {
    return this.upTo(99) >= 100 - percent;
  }

  pick<T>(list: readonly T[]): T {
    return list[this.upTo(list.length - 1)] as T;
  }

  /** Some of a list, in its order. */
  some<T>(list: readonly T[], percent = 40): T[] {
    return list.filter(() => this.chance(percent));
  }

  /** At least one of a list. */
  atLeastOne<T>(list: readonly T[], percent = 40): T[] {
    const found = this.some(list, percent);
    return found.length > 0 ? found : [this.pick(list)];
  }

  shuffled<T>(list: readonly T[]): T[] {
    const out = [...list];
    for (let i = 0; i + 1 < out.length; i++) {
      const j = i + this.upTo(out.length - 1 - i);
      [out[i], out[j]] = [out[j] as T, out[i] as T];
    }
    return out;
  }
}
