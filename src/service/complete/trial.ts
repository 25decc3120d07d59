import { parse } from '../../language/index.js';
import { readBlock } from '../../vocabulary/index.js';
import { headText, type Here } from './here.js';

/** Lines below that are read along, where the first word of a line is exchanged. */
const MOST_BELOW = 20;

/** Tells whether a text in place of the word would leave the line worse to read than it is. */
export type Trial = (text: string, word?: { readonly start: number; readonly end: number }) => boolean;

/**
 * The reader itself judges what is offered: a completion that brings a message that was not there is none. Only the
 * line, the heads it stands below and the nearest lines below it are read, so the size of the file does not matter.
 */
export function trialAt(here: Here): Trial {
  const { above, line, lineStart, word: own, before, block } = here;
  const head = above.map((one) => `${headText(one)}\n`).join('');
  const below = before.length === 0 ? linesBelow(here) : '';
  let worst: number | undefined;
  return (text, word = own) => {
    worst ??= messages(`${head}${line}${below}`, head.length);
    const edited = `${block.text.slice(lineStart, word.start)}${text}${line.slice(word.end - lineStart)}`;
    return messages(`${head}${edited}${below}`, head.length) <= worst;
  };
}

function messages(text: string, from: number): number {
  const tree = parse('', text);
  let count = 0;
  tree.blocks.forEach((block, i) => {
    for (const { at } of readBlock(block).problems) if ((tree.starts[i] as number) + at.start >= from) count++;
  });
  return count;
}

function linesBelow({ statement }: Here): string {
  return (statement?.children ?? []).slice(0, MOST_BELOW).map((one) => `\n${headText(one)}`).join('');
}
