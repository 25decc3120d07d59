import type { Problem } from '../language/index.js';
import type { Record } from '../vocabulary/index.js';

interface Remembered {
  readonly madeFrom: readonly unknown[];
  readonly value: unknown;
  readonly problems: readonly Problem[];
}

const memory = new WeakMap<Record, Remembered>();

/**
 * Builds something from a record once, for as long as all it is made from stays the same. A keystroke changes one
 * block; everything else comes out of here with its identity kept, and what is computed from it is kept in turn.
 * What was found wrong is told again each time.
 */
export function remember<T>(record: Record, madeFrom: readonly unknown[], problems: Problem[], build: (problems: Problem[]) => T): T {
  const before = memory.get(record);
  if (before !== undefined && sameItems(before.madeFrom, madeFrom)) {
    for (const one of before.problems) problems.push(one);
    return before.value as T;
  }
  const found: Problem[] = [];
  const value = build(found);
  for (const one of found) problems.push(one);
  memory.set(record, { madeFrom, value, problems: found });
  return value;
}

export function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
