import type { Record } from '../../vocabulary/index.js';
import { mentionsIn, type Mention } from '../at.js';
import type { Weighing } from '../types.js';

const perRecord = new WeakMap<Record, readonly Mention[]>();

/** Every place of a name in an estimate and its shared files. A keystroke makes the mentions of one record anew. */
export function mentionsOf(name: string, { resolved }: Weighing): readonly Mention[] {
  const found: Mention[] = [];
  for (const record of resolved.records) for (const mention of mentionsBelow(record)) if (mention.name === name) found.push(mention);
  return found;
}

export function mentionsBelow(record: Record): readonly Mention[] {
  let found = perRecord.get(record);
  if (found === undefined) {
    found = [...mentionsIn([record])];
    perRecord.set(record, found);
  }
  return found;
}
