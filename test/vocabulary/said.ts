import { parse, type Message } from '../../src/language/index.js';
import { readBlock, recordJson, type ReadBlock, type Record } from '../../src/vocabulary/index.js';

/** A message as its code, the words that it marks, and what the fix would write there. */
export type Said = readonly [code: string, marked: string, fix?: string];

const blocksOf = (text: string): readonly ReadBlock[] => parse('a.yard', text).blocks.map(readBlock);

/** What reading a text complains about. */
export function said(text: string): readonly Said[] {
  return blocksOf(text).flatMap(({ problems }) => problems.map(({ code, at, fix }): Said => {
    const marked = at.block.text.slice(at.start, at.end);
    return fix === undefined ? [code, marked] : [code, marked, fix.text];
  }));
}

export function recordsOf(text: string): readonly Record[] {
  return blocksOf(text).flatMap(({ records }) => records);
}

/** What the first line of a text says, as data. */
export function jsonOf(text: string): unknown {
  const [record] = recordsOf(text);
  return record === undefined ? undefined : recordJson(record);
}

/** The whole words of each message on a text. */
export function messagesOf(text: string): readonly Message[] {
  return blocksOf(text).flatMap(({ problems }) => problems.map(({ message }) => message));
}
