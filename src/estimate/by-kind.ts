import { LastTime, type Changes } from '../language/index.js';
import type { Kind, Record, RecordOf } from '../vocabulary/index.js';

export type OfKind = <F extends Kind>(kind: F) => readonly RecordOf<F>[];

type Sorted = ReadonlyMap<string, readonly Record[]>;

const lastTime = new LastTime<Record, Sorted>(sortedAnew, replacedIn);

/**
 * The records by their kinds, each in the order of the lines. `first` is the first record of the file itself, by which it
 * is known again: a keystroke replaces one line by another of its kind.
 */
export function byKind(records: readonly Record[], first: Record | undefined): OfKind {
  const sorted = lastTime.for(records, first);
  return <F extends Kind>(kind: F) => (sorted.get(kind.word) ?? []) as readonly Record[] as readonly RecordOf<F>[];
}

function sortedAnew(records: readonly Record[]): Sorted {
  const sorted = new Map<string, Record[]>();
  for (const record of records) {
    const ofKind = sorted.get(record.kind.word);
    if (ofKind === undefined) sorted.set(record.kind.word, [record]);
    else ofKind.push(record);
  }
  return sorted;
}

/** The same with a few records replaced; undefined where one is of another kind now. */
function replacedIn(sorted: Sorted, { places, old, now }: Changes<Record>): Sorted | undefined {
  const replaced = new Map<string, readonly Record[]>(sorted);
  for (const i of places) {
    const [was, is] = [old[i] as Record, now[i] as Record];
    if (was.kind !== is.kind) return undefined;
    replaced.set(is.kind.word, (replaced.get(is.kind.word) ?? []).map((one) => (one === was ? is : one)));
  }
  return replaced;
}
