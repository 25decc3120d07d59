import { isSpaceLike } from './look-alikes.js';
import { parseBlock } from './parse-block.js';
import { limits } from './limits.js';
import { problem } from './problem.js';
import { longFile } from './syntax-rules.js';
import type { Block, Problem, Range, Span, Tree } from './tree.js';

/** Parses a whole file. Never throws; what is wrong is in the blocks' problems. */
export function parse(uri: string, text: string): Tree {
  if (text.length > limits.fileLength) return unread(uri, text, { has: text.length, what: 'characters' });
  const starts = blockStarts(text);
  if (starts.length > limits.blocks) return unread(uri, text, { has: starts.length, what: 'lines at its left edge' });
  const blocks = starts.map((start, i) => parseBlock(uri, text.slice(start, starts[i + 1] ?? text.length), i === 0));
  return { uri, text, blocks, starts };
}

/**
 * Parses only the blocks of a file whose first two words are wanted, for whoever needs little of many files: each is as
 * `parse` would give it, and `rangeIn` gives its place in the whole text.
 */
export function parseSome(uri: string, text: string, wanted: (first: string, second: string | undefined) => boolean): Tree {
  if (text.length > limits.fileLength) return parse(uri, text);
  const starts = blockStarts(text);
  if (starts.length > limits.blocks) return parse(uri, text);
  const words = /\ufeff?([^\s"#]+)(?:[^\S\n]+([^\s"#]+))?/y;
  const found = starts.flatMap((start, i) => {
    words.lastIndex = start;
    const [, first, second] = words.exec(text) ?? [];
    return first !== undefined && wanted(first, second) ? [{ start, block: parseBlock(uri, text.slice(start, starts[i + 1] ?? text.length), i === 0) }] : [];
  });
  return { uri, text, blocks: found.map(({ block }) => block), starts: found.map(({ start }) => start) };
}

/**
 * Parses a new text of the same file and keeps every block whose text is as before, so that all that hangs on a
 * block's identity is kept too. Equal to `parse` in everything but identity.
 */
export function reparse(before: Tree, text: string): Tree {
  if (text === before.text) return before;
  if (text.length > limits.fileLength) return parse(before.uri, text);
  const starts = blockStarts(text);
  if (starts.length > limits.blocks) return parse(before.uri, text);
  const textOf = (i: number) => text.slice(starts[i], starts[i + 1] ?? text.length);
  const blocks: (Block | undefined)[] = new Array<Block | undefined>(starts.length).fill(undefined);

  let head = 0;
  const shared = Math.min(starts.length, before.blocks.length);
  while (head < shared) {
    const old = before.blocks[head] as Block;
    if (!holdsAt(text, starts, head, old.text)) break;
    blocks[head++] = old;
  }
  let tail = 0;
  // The first block may start with a byte order mark, which only the first block may: never take it as a tail.
  while (tail < shared - head && starts.length - 1 - tail > 0 && before.blocks.length - 1 - tail > 0) {
    const old = before.blocks[before.blocks.length - 1 - tail] as Block;
    const i = starts.length - 1 - tail;
    if (!holdsAt(text, starts, i, old.text)) break;
    blocks[i] = old;
    tail++;
  }
  return {
    uri: before.uri,
    text,
    starts,
    blocks: blocks.map((block, i) => block ?? parseBlock(before.uri, textOf(i), i === 0)),
  };
}

/** A file too long to be read, as one block that says so. */
function unread(uri: string, text: string, long: { readonly has: number; readonly what: 'characters' | 'lines at its left edge' }): Tree {
  const problems: Problem[] = [];
  const block: Block = { uri, text, lineEnds: 0, statements: [], comments: [], problems };
  problems.push(problem(longFile, { block, start: 0, end: 1 }, long));
  return { uri, text, blocks: [block], starts: [0] };
}

function holdsAt(text: string, starts: readonly number[], i: number, expected: string): boolean {
  const start = starts[i] as number;
  const end = starts[i + 1] ?? text.length;
  return end - start === expected.length && text.startsWith(expected, start);
}

/** Where each block starts: at every line whose first character is neither white space nor `#`. */
function blockStarts(text: string): number[] {
  const starts = [0];
  let at = 0;
  while ((at = nextLine(text, at)) < text.length) {
    const code = text.charCodeAt(at);
    if (code !== 32 && code !== 9 && code !== 35 && code !== 10 && code !== 13 && !isSpaceLike(code)) starts.push(at);
  }
  return starts;
}

function nextLine(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  return end < 0 ? text.length : end + 1;
}

const indexes = new WeakMap<Tree, Map<Block, number>>();

/** File offsets of a span, or undefined where its block is not (any more) in this tree. */
export function rangeIn(tree: Tree, span: Span): Range | undefined {
  let index = indexes.get(tree);
  if (index === undefined) {
    index = new Map(tree.blocks.map((block, i) => [block, tree.starts[i] as number]));
    indexes.set(tree, index);
  }
  const start = index.get(span.block);
  return start === undefined ? undefined : { start: start + span.start, end: start + span.end };
}

/** The text of a tree; always the text it was parsed from. */
export function print(tree: Tree): string {
  return tree.blocks.map((block) => block.text).join('');
}
