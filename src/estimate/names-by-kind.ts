import { sameItems } from '../language/index.js';
import type { Record } from '../vocabulary/index.js';
import { isNamed, NAMED_KINDS, namedBelow, namedIn, nameIn, PLACE_OF_KIND } from './named-records.js';

/** The names of one kind in the order in which they are written, and where each stands first. */
export interface Names {
  readonly names: readonly string[];
  readonly places: ReadonlyMap<string, number>;
  readonly repeated: boolean;
}

/** The names of a file with where they stand, for as long as the same names stand in the same order. */
export interface Sorted {
  readonly byKind: readonly Names[];
  readonly repeated: boolean;
  /** Stands for the names: a record whose names were all found among them need not be looked through again. */
  readonly standIn: object;
}

/** Records as they were sorted: a keystroke changes one of them, and mostly no name. */
export interface SortedRecords {
  readonly records: readonly Record[];
  readonly sorted: Sorted;
  /** The records of each kind that have names, in the order of `sorted`. */
  readonly ofKinds: readonly (readonly Record[])[];
}

function sortedIn(names: readonly string[]): Names {
  const places = new Map<string, number>();
  names.forEach((name, i) => {
    if (!places.has(name)) places.set(name, i);
  });
  return { names, places, repeated: places.size < names.length };
}

/** The names of each kind; those that are as before stay the same object. */
export function sortedAnew(ofKinds: readonly (readonly Record[])[], before: Sorted | undefined): Sorted {
  const byKind = ofKinds.map((records, i) => {
    const names = records.map(nameIn);
    const same = before?.byKind[i];
    return same !== undefined && sameItems(same.names, names) ? same : sortedIn(names);
  });
  return before !== undefined && sameItems(before.byKind, byKind) ? before : { byKind, repeated: byKind.some(({ repeated }) => repeated), standIn: {} };
}

/** The records of each kind that have names, in the order of the lines. */
export function sortedByKind(records: readonly Record[]): readonly (readonly Record[])[] {
  const ofKinds = NAMED_KINDS.map((): Record[] => []);
  const shop = records.find((record) => record.kind.word === 'shop');
  for (const record of records) {
    if (record.kind.word === 'shop' && record !== shop) continue; // only the first shop counts
    if (isNamed(record)) (ofKinds[PLACE_OF_KIND.get(record.kind.word) as number] as Record[]).push(record);
    for (const one of namedBelow(record)) (ofKinds[PLACE_OF_KIND.get(one.kind.word) as number] as Record[]).push(one);
  }
  return ofKinds;
}

/** The records of each kind where only a few lines changed and gave no other name than before; undefined where they did. */
export function replacedByKind({ records, sorted, ofKinds }: SortedRecords, now: readonly Record[], changed: readonly number[]): readonly (readonly Record[])[] | undefined {
  if (sorted.repeated) return undefined;
  const replaced = [...ofKinds];
  for (const i of changed) {
    const [old, fresh] = [records[i] as Record, now[i] as Record];
    if (old.kind.word === 'shop' || fresh.kind.word === 'shop') return undefined;
    const [names, others] = [namedIn(old), namedIn(fresh)];
    if (names.length !== others.length) return undefined;
    for (const [j, one] of others.entries()) {
      const { kind } = names[j] as Record;
      if (kind.word !== one.kind.word || nameIn(names[j] as Record) !== nameIn(one)) return undefined;
      const at = PLACE_OF_KIND.get(kind.word) as number;
      const list = replaced[at] === ofKinds[at] ? [...(ofKinds[at] as readonly Record[])] : (replaced[at] as Record[]);
      list[sorted.byKind[at]?.places.get(nameIn(one)) as number] = one;
      replaced[at] = list;
    }
  }
  return replaced;
}
