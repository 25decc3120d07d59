import type { Record } from '../../vocabulary/index.js';
import { match } from './match.js';
import { thingsOf } from './things.js';

/** What a line of either version is, whatever it is called there: the same object for both; undefined where only one has it. */
export type SameLine = (record: Record) => object | undefined;

/** Knows the lines of two versions that are one line, also under another name or title. */
export function sameLines(before: readonly Record[], after: readonly Record[]): SameLine {
  const [then, now] = [thingsOf(before), thingsOf(after)];
  const { pairOf } = match(then, now);
  return (record) => {
    const thing = then.of(record) ?? now.of(record);
    return thing === undefined ? undefined : pairOf(thing);
  };
}
