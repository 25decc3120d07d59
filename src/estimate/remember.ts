import { sameItems, Slot, type Problem } from '../language/index.js';
import { heldByRecords, type Record } from '../vocabulary/index.js';

/** What something was made among: one object that stands for all around it, and the things beside. */
export interface Among {
  readonly around: object;
  readonly near: readonly unknown[];
}

interface Remembered {
  readonly madeFrom: readonly unknown[];
  among: Among | undefined;
  readonly value: unknown;
  readonly problems: readonly Problem[];
}

const memory = new Slot<Remembered>(heldByRecords);

/**
 * Builds something from a record once, for as long as all it is made from stays the same. A keystroke changes one
 * block; everything else comes out of here with its identity kept, and what is computed from it is kept in turn.
 * What was found wrong is told again each time.
 */
export function remember<T>(record: Record, madeFrom: readonly unknown[], problems: Problem[], build: (problems: Problem[]) => T, among?: Among): T {
  const before = memory.get(record);
  if (before !== undefined && sameItems(before.madeFrom, madeFrom)) {
    before.among = among;
    for (const one of before.problems) problems.push(one);
    return before.value as T;
  }
  const found: Problem[] = [];
  const value = build(found);
  for (const one of found) problems.push(one);
  memory.set(record, { madeFrom, among, value, problems: found });
  return value;
}

/** What is remembered, without asking what it is made from, where all around it is the same. */
export function rememberedAmong<T>(record: Record, { around, near }: Among, problems: Problem[]): { readonly value: T } | undefined {
  const before = memory.get(record);
  if (before?.among?.around !== around || !sameItems(before.among.near, near)) return undefined;
  for (const one of before.problems) problems.push(one);
  return before as { readonly value: T };
}
