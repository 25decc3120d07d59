import type { Record } from '../../vocabulary/index.js';
import { mentionsIn, type Mention } from '../at.js';
import type { Weighing } from '../types.js';

const perRecord = new WeakMap<Record, readonly Mention[]>();
const perWeighing = new WeakMap<Weighing, ReadonlyMap<string, readonly Mention[]>>();

/** Every use of a name in an estimate and its shared files. Kept by record, so that a keystroke reads one anew. */
export function mentionsOf(name: string, weighing: Weighing): readonly Mention[] {
  let index = perWeighing.get(weighing);
  if (index === undefined) {
    const made = new Map<string, Mention[]>();
    for (const record of weighing.resolved.records) {
      for (const mention of mentionsBelow(record)) {
        const list = made.get(mention.name);
        if (list === undefined) made.set(mention.name, [mention]);
        else list.push(mention);
      }
    }
    index = made;
    perWeighing.set(weighing, index);
  }
  return index.get(name) ?? [];
}

export function mentionsBelow(record: Record): readonly Mention[] {
  let found = perRecord.get(record);
  if (found === undefined) {
    found = [...mentionsIn([record])];
    perRecord.set(record, found);
  }
  return found;
}
