import type { Problem } from '../language/index.js';
import type { Record } from '../vocabulary/index.js';
import { sameItems } from './remember.js';

/** What some records were made into, by their names. */
export interface Table<T> {
  /** The entity of a name, made where it is first asked for. `path` is what led there. */
  readonly find: (name: string, path?: readonly string[]) => T | undefined;
  /** Stands for the whole table: the same object as long as it would be filled with the same entities. */
  readonly standIn: object;
}

interface Kept {
  readonly madeFrom: readonly unknown[];
  readonly made: Map<string, unknown>;
  quiet: boolean;
}

const NOWHERE: readonly string[] = [];
const before = new WeakMap<Record, Map<string, Kept>>();

/**
 * The tables of one file. One is kept from the last time that the file was resolved where all that it is made from is
 * still the same, item by item, and nothing was found wrong with it: a keystroke in a job leaves the parts as they are.
 * What was wrong must be told again, so such a table is filled anew.
 */
export class Tables {
  private readonly last: Map<string, Kept>;

  /** `first` is the first record of the file itself, by which it is known again. */
  constructor(
    first: Record | undefined,
    private readonly problems: readonly Problem[],
  ) {
    this.last = (first === undefined ? undefined : before.get(first)) ?? new Map<string, Kept>();
    if (first !== undefined) before.set(first, this.last);
  }

  table<T>(word: string, madeFrom: readonly unknown[], make: (name: string, path: readonly string[]) => T | undefined): Table<T> {
    const kept = this.kept(word, madeFrom);
    const made = kept.made as Map<string, T | undefined>;
    const find = (name: string, path: readonly string[] = NOWHERE): T | undefined => {
      const found = made.get(name);
      if (found !== undefined || made.has(name)) return found;
      const told = this.problems.length;
      const one = make(name, path);
      if (this.problems.length > told) kept.quiet = false;
      made.set(name, one);
      return one;
    };
    return { find, standIn: made };
  }

  /** One object for a list, the same as last time where the items are. */
  standIn(word: string, items: readonly unknown[]): object {
    return this.kept(word, items).made;
  }

  private kept(word: string, madeFrom: readonly unknown[]): Kept {
    const last = this.last.get(word);
    if (last?.quiet === true && sameItems(last.madeFrom, madeFrom)) return last;
    const kept: Kept = { madeFrom, made: new Map(), quiet: true };
    this.last.set(word, kept);
    return kept;
  }
}
