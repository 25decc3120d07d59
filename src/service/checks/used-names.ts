import { referencesOf, type Resolved } from '../../estimate/index.js';
import type { Name, Record } from '../../vocabulary/index.js';

const kept = new WeakMap<Record, readonly string[]>();
const byEstimate = new WeakMap<Resolved, ReadonlySet<string>>();

/** Every name that some line uses, as “kind name”, under each kind that it may stand for. */
export function usedNames(resolved: Resolved): ReadonlySet<string> {
  let used = byEstimate.get(resolved);
  if (used === undefined) {
    const names = new Set<string>();
    for (const record of resolved.records) for (const key of namesUsedBy(record)) names.add(key);
    byEstimate.set(resolved, (used = names));
  }
  return used;
}

function namesUsedBy(record: Record): readonly string[] {
  let keys = kept.get(record);
  if (keys === undefined) {
    const own = referencesOf(record.kind).flatMap(({ key, refersTo }) => {
      const value = record.values[key] as Name | readonly Name[] | undefined;
      return value === undefined ? [] : ([value].flat() as Name[]).flatMap(({ name }) => refersTo.map((kind) => `${kind} ${name}`));
    });
    kept.set(record, (keys = [...own, ...record.children.flatMap(namesUsedBy)]));
  }
  return keys;
}
