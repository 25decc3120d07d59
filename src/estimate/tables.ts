import type { Problem } from '../language/index.js';
import { Slot } from '../language/index.js';
import type { Record } from '../vocabulary/index.js';
import { sameItems } from './remember.js';

/** What some records were made into, by their names. */
export interface Table<T> {
  /** The entity of a name, made where it is first asked for. `path` is what led there. */
  readonly find: (name: string, path?: readonly string[]) => T | undefined;
  /** Every entity of the table, each once, in the order of the records. */
  readonly all: () => readonly T[];
  /** Stands for the whole table: the same object as long as it would be filled with the same entities. */
  readonly standIn: object;
}

interface Kept {
  readonly madeFrom: readonly unknown[];
  readonly records: readonly Record[];
  readonly made: Map<string, unknown>;
  all: readonly unknown[] | undefined;
  quiet: boolean;
}

const NOWHERE: readonly string[] = [];
const NO_RECORDS: readonly Record[] = [];
const before = new Slot<Map<string, Kept>>();

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

  table<T>(word: string, madeFrom: readonly unknown[], records: readonly Record[], make: (name: string, path: readonly string[]) => T | undefined): Table<T> {
    const kept = this.kept(word, madeFrom, records);
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
    const all = () => (kept.all ??= everyOne(records, find)) as readonly T[];
    return { find, all, standIn: made };
  }

  /** One object for a list, the same as last time where the items are. */
  standIn(word: string, items: readonly unknown[]): object {
    return this.kept(word, items, NO_RECORDS).made;
  }

  private kept(word: string, madeFrom: readonly unknown[], records: readonly Record[]): Kept {
    const last = this.last.get(word);
    if (last?.quiet === true && sameItems(last.madeFrom, madeFrom) && sameItems(last.records, records)) return last;
    const kept: Kept = { madeFrom, records, made: new Map(), all: undefined, quiet: true };
    this.last.set(word, kept);
    return kept;
  }
}

function everyOne<T>(records: readonly Record[], find: (name: string) => T | undefined): readonly T[] {
  const found = new Set<T>();
  for (const { name } of records) {
    const one = name === undefined ? undefined : find(name.name);
    if (one !== undefined) found.add(one);
  }
  return [...found];
}
