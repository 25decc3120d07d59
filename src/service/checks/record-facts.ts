import { changedSince } from '../../language/index.js';
import { referencesIn, type Resolved } from '../../estimate/index.js';
import type { Amount, Field, Name, Record } from '../../vocabulary/index.js';

/** From low to high a figure may grow so many times before it says nothing, or a decimal point has slipped. */
export const MOST_TIMES = 10;

/** What the checks of a whole estimate ask of each line; worked out once for each. */
interface RecordFacts {
  /** “kind name” of the line itself. */
  readonly gives: string | undefined;
  /** “kind name” of every line that it names, under each kind that may be meant. */
  readonly uses: readonly string[];
  /** Figures whose range says nothing. */
  readonly wide: readonly Amount[];
}

/** The lines of an estimate of which the checks have something to ask. */
export interface AllFacts {
  /** Whether some line names what is called “kind name”. */
  readonly names: (called: string) => boolean;
  /** Lines with a name that no line names, in the order of the records. */
  readonly unnamed: () => readonly Record[];
  /** Figures whose range says nothing, with their lines. */
  readonly wide: () => readonly { readonly record: Record; readonly amounts: readonly Amount[] }[];
}

/** By the first line of the estimate’s own file, which typing further down leaves as it is. */
const kept = new WeakMap<Record, FactsOfLines>();

/**
 * Facts of every line. A keystroke replaces one record, so only what differs from the last time is worked out again;
 * the answer holds until the next call for the same file.
 */
export function factsOf({ records, estimate: { uri } }: Pick<Resolved, 'records' | 'estimate'>): AllFacts {
  const first = records.find(({ block }) => block.uri === uri);
  const before = first === undefined ? undefined : kept.get(first);
  if (before?.follow(records) === true) return before;
  const made = new FactsOfLines(records);
  if (first !== undefined) kept.set(first, made);
  return made;
}

class FactsOfLines implements AllFacts {
  private readonly facts: RecordFacts[];
  /** How often each line is named. */
  private readonly named = new Map<string, number>();
  /** Where the lines of a name stand. */
  private readonly placesOf = new Map<string, Set<number>>();
  private readonly unnamedAt = new Set<number>();
  private readonly wideAt = new Set<number>();

  constructor(private records: readonly Record[]) {
    this.facts = records.map(readFacts);
    for (const { uses } of this.facts) for (const key of uses) this.named.set(key, (this.named.get(key) ?? 0) + 1);
    this.facts.forEach((facts, i) => this.place(facts, i));
  }

  /** Takes over what differs; false where that is more than a few lines. */
  follow(records: readonly Record[]): boolean {
    const changed = changedSince(this.records, records);
    if (changed === undefined) return false;
    this.records = records;
    for (const i of changed) this.replace(i, readFacts(records[i] as Record));
    return true;
  }

  names(called: string): boolean {
    return this.named.has(called);
  }

  unnamed(): readonly Record[] {
    return inOrder(this.unnamedAt).map((i) => this.records[i] as Record);
  }

  wide(): readonly { readonly record: Record; readonly amounts: readonly Amount[] }[] {
    return inOrder(this.wideAt).map((i) => ({ record: this.records[i] as Record, amounts: this.facts[i]?.wide ?? [] }));
  }

  private replace(i: number, facts: RecordFacts): void {
    const old = this.facts[i] as RecordFacts;
    this.facts[i] = facts;
    if (old.gives !== undefined) this.placesOf.get(old.gives)?.delete(i);
    this.unnamedAt.delete(i);
    this.wideAt.delete(i);
    for (const key of old.uses) this.count(key, -1);
    for (const key of facts.uses) this.count(key, 1);
    this.place(facts, i);
  }

  private place({ gives, wide }: RecordFacts, i: number): void {
    if (wide.length > 0) this.wideAt.add(i);
    if (gives === undefined) return;
    const places = this.placesOf.get(gives);
    if (places === undefined) this.placesOf.set(gives, new Set([i]));
    else places.add(i);
    if (!this.named.has(gives)) this.unnamedAt.add(i);
  }

  private count(key: string, by: number): void {
    const now = (this.named.get(key) ?? 0) + by;
    if (now === 0) this.named.delete(key);
    else this.named.set(key, now);
    for (const i of this.placesOf.get(key) ?? []) {
      if (now === 0) this.unnamedAt.add(i);
      else this.unnamedAt.delete(i);
    }
  }
}

function inOrder(places: ReadonlySet<number>): readonly number[] {
  return [...places].sort((a, b) => a - b);
}

function readFacts(record: Record): RecordFacts {
  const uses: string[] = [];
  const wide: Amount[] = [];
  const visit = ({ kind, values, children }: Record): void => {
    const references = referencesIn(kind);
    for (const key in values) {
      const reference = references.get(key);
      if (reference !== undefined) use(values[key] as Name | readonly Name[], reference.refersTo);
      else if ((kind.fields[key] as Field).value.measures !== undefined && isWide(values[key] as Amount)) wide.push(values[key] as Amount);
    }
    for (const child of children) visit(child);
  };
  const use = (names: Name | readonly Name[], kinds: readonly string[]): void => {
    for (const { name } of 'name' in names ? [names] : names) for (const kind of kinds) uses.push(`${kind} ${name}`);
  };
  visit(record);
  return { gives: record.name === undefined ? undefined : `${record.kind.word} ${record.name.name}`, uses, wide };
}

/** One figure stands for all three where no range was written, which is nearly everywhere. Readings have none. */
function isWide({ low, high }: Amount): boolean {
  return low !== high && !low.isZero() && high.gte(low.times(MOST_TIMES));
}
