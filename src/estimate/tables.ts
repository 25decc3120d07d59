import { changedSince, sameItems, type Problem } from '../language/index.js';
import type { Record } from '../vocabulary/index.js';

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
  /** The names of `made` that were filled in since it was last looked through for what rests on others. */
  readonly fresh: string[];
  /** The names of what rests on others of the table. */
  readonly leaning: Set<string>;
  readonly standIn: object;
  all: readonly unknown[] | undefined;
  /** What was in `all` before a few lines changed, and what of it is not any more. */
  still: Still | undefined;
  quiet: boolean;
}

/** What an entity of a table was made from of the same table, such as the jobs that a job needs. */
export type Behind<T> = (one: T) => readonly T[];

const NOWHERE: readonly string[] = [];
const NO_RECORDS: readonly Record[] = [];
const before = new WeakMap<Record, Map<string, Kept>>();

/**
 * The tables of one file. One is kept from the last time that the file was resolved where all that it is made from is
 * still the same, item by item, and nothing was found wrong with it: a keystroke in a job leaves the parts as they are,
 * and of the jobs all but that one and those that rest on it. What was wrong must be told again, so such a table is
 * filled anew.
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

  table<T>(word: string, madeFrom: readonly unknown[], records: readonly Record[], make: (name: string, path: readonly string[]) => T | undefined, behind: Behind<T> = () => []): Table<T> {
    const kept = this.kept(word, madeFrom, records, behind as Behind<unknown>);
    const made = kept.made as Map<string, T | undefined>;
    const find = (name: string, path: readonly string[] = NOWHERE): T | undefined => {
      const found = made.get(name);
      if (found !== undefined || made.has(name)) return found;
      const told = this.problems.length;
      const one = make(name, path);
      if (this.problems.length > told) kept.quiet = false;
      made.set(name, one);
      kept.fresh.push(name);
      return one;
    };
    const all = () => (kept.all ??= kept.still?.all === undefined ? everyOne(records, find) : replacedIn(kept.still.all, kept.still.stale, records, find)) as readonly T[];
    return { find, all, standIn: kept.standIn };
  }

  /** One object for a list, the same as last time where the items are. */
  standIn(word: string, items: readonly unknown[]): object {
    return this.kept(word, items, NO_RECORDS, () => []).standIn;
  }

  private kept(word: string, madeFrom: readonly unknown[], records: readonly Record[], behind: Behind<unknown>): Kept {
    const last = this.last.get(word);
    const same = last?.quiet === true && sameItems(last.madeFrom, madeFrom) ? last : undefined;
    if (same !== undefined && sameItems(same.records, records)) return same;
    const still = same === undefined ? undefined : stillIn(same, records, behind);
    const kept: Kept = { madeFrom, records, made: still?.made ?? new Map<string, unknown>(), fresh: [], leaning: still?.leaning ?? new Set(), standIn: {}, all: undefined, still, quiet: true };
    this.last.set(word, kept);
    return kept;
  }
}

/** What is left of a table where a few lines changed. */
interface Still {
  readonly made: Map<string, unknown>;
  readonly leaning: Set<string>;
  readonly stale: ReadonlySet<unknown>;
  /** One for each record, where every record had one of its own. */
  readonly all: readonly unknown[] | undefined;
}

/** What a table made that is still as it was; undefined where more than a few lines changed. The table itself is used up by it. */
function stillIn({ made, fresh, leaning, all, records: old }: Kept, records: readonly Record[], behind: Behind<unknown>): Still | undefined {
  const places = changedSince(old, records);
  if (places === undefined || places.some((i) => old[i]?.name === undefined || old[i].name.name !== records[i]?.name?.name)) return undefined;
  const behindName = (name: string) => {
    const one = made.get(name);
    return one === undefined ? [] : behind(one);
  };
  for (const name of fresh) {
    if (behindName(name).length > 0) leaning.add(name);
    else leaning.delete(name);
  }
  const stale = new Set<unknown>();
  const drop = (name: string) => {
    stale.add(made.get(name));
    made.delete(name);
    leaning.delete(name);
  };
  for (const i of places) drop(old[i]?.name?.name ?? '');
  for (let found = true; found;) {
    found = false;
    for (const name of leaning) {
      if (!behindName(name).some((other) => stale.has(other))) continue;
      drop(name);
      found = true;
    }
  }
  return { made, leaning, stale, all: all?.length === records.length ? all : undefined };
}

function replacedIn<T>(all: readonly unknown[], stale: ReadonlySet<unknown>, records: readonly Record[], find: (name: string) => T | undefined): readonly unknown[] {
  const now = [...all];
  for (const one of stale) {
    const i = all.indexOf(one);
    if (i >= 0) now[i] = find(records[i]?.name?.name ?? '');
  }
  return now.includes(undefined) ? everyOne(records, find) : now;
}

function everyOne<T>(records: readonly Record[], find: (name: string) => T | undefined): readonly T[] {
  const found = new Set<T>();
  for (const { name } of records) {
    const one = name === undefined ? undefined : find(name.name);
    if (one !== undefined) found.add(one);
  }
  return [...found];
}
