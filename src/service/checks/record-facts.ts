import { referencesIn, type Resolved } from '../../estimate/index.js';
import type { Amount, Field, Name, Record } from '../../vocabulary/index.js';

/** From low to high a figure may grow so many times before it says nothing, or a decimal point has slipped. */
export const MOST_TIMES = 10;

/** What the checks of a whole estimate ask of each line; worked out once for each. */
export interface RecordFacts {
  /** “kind name” of the line itself. */
  readonly gives: string | undefined;
  /** “kind name” of every line that it names, under each kind that may be meant. */
  readonly uses: readonly string[];
  /** Figures whose range says nothing. */
  readonly wide: readonly Amount[];
}

/** The facts of all lines of an estimate, in the order of its records. */
export interface AllFacts {
  readonly records: readonly Record[];
  readonly facts: readonly RecordFacts[];
  /** How often each line is named. */
  readonly named: ReadonlyMap<string, number>;
}

interface Kept {
  records: readonly Record[];
  readonly facts: RecordFacts[];
  readonly named: Map<string, number>;
}

/** By the first line of the estimate’s own file, which typing further down leaves as it is. */
const kept = new WeakMap<Record, Kept>();

/**
 * Facts of every line. A keystroke replaces one record, so only what differs from the last time is worked out again;
 * the answer holds until the next call for the same file.
 */
export function factsOf({ records, estimate: { uri } }: Pick<Resolved, 'records' | 'estimate'>): AllFacts {
  const first = records.find(({ block }) => block.uri === uri);
  const before = first === undefined ? undefined : kept.get(first);
  if (before !== undefined && before.records.length === records.length) {
    for (let i = 0; i < records.length; i++) if (records[i] !== before.records[i]) replace(before, i, records[i] as Record);
    before.records = records;
    return before;
  }
  const made: Kept = { records, facts: records.map(readFacts), named: new Map() };
  for (const { uses } of made.facts) for (const key of uses) count(made.named, key, 1);
  if (first !== undefined) kept.set(first, made);
  return made;
}

function replace({ facts, named }: Kept, i: number, record: Record): void {
  for (const key of facts[i]?.uses ?? []) count(named, key, -1);
  const now = readFacts(record);
  for (const key of now.uses) count(named, key, 1);
  facts[i] = now;
}

function count(named: Map<string, number>, key: string, by: number): void {
  const now = (named.get(key) ?? 0) + by;
  if (now === 0) named.delete(key);
  else named.set(key, now);
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
