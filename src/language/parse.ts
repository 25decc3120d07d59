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
  if (text.length > limits.fileLength || isUnread(before)) return parse(before.uri, text);
  const head = headOf(before, text);
  const tail = tailOf(before, text, head);
  const from = startOf(before, head);
  const moved = text.length - before.text.length;
  const firstOfTail = before.blocks.length - tail;
  const to = startOf(before, firstOfTail) + moved;
  const between = from < to || from === 0 ? blockStarts(text, from, to) : [];
  if (head + between.length + tail > limits.blocks) return parse(before.uri, text);
  const parsed = between.map((start, i) => parseBlock(before.uri, text.slice(start, between[i + 1] ?? to), start === 0));
  return {
    uri: before.uri,
    text,
    starts: before.starts.slice(0, head).concat(between, movedBy(before.starts.slice(firstOfTail), moved)),
    blocks: before.blocks.slice(0, head).concat(parsed, before.blocks.slice(firstOfTail)),
  };
}

function movedBy(starts: readonly number[], by: number): readonly number[] {
  return by === 0 ? starts : starts.map((start) => start + by);
}

/** How many of the first blocks stand in the new text as they were. */
function headOf(before: Tree, text: string): number {
  const same = most(before.blocks.length, (from, to) => {
    const [start, end] = [startOf(before, from), startOf(before, to)];
    return text.slice(start, end) === before.text.slice(start, end);
  });
  const end = startOf(before, same);
  // What follows in the new text may go on with the last of them.
  return same > 0 && end > 0 && (end === text.length || isStart(text, end)) ? same : Math.max(0, same - 1);
}

/** How many of the last blocks do, behind those of the head. The first block of a file may start with a byte order mark, which no other may: it is never one of them. */
function tailOf(before: Tree, text: string, head: number): number {
  const { length } = before.blocks;
  const moved = text.length - before.text.length;
  const from = Math.max(startOf(before, head), 1);
  const same = most(length - Math.max(head, 1), (few, more) => {
    const [start, end] = [startOf(before, length - more), startOf(before, length - few)];
    return start + moved >= from && text.slice(start + moved, end + moved) === before.text.slice(start, end);
  });
  return same > 0 && !isStart(text, startOf(before, length - same) + moved) ? same - 1 : same;
}

/** The largest count up to `limit` for which every step from nothing on holds, by halving; a step of many holds where each of them does. */
function most(limit: number, holds: (from: number, to: number) => boolean): number {
  let known = 0;
  let step = limit;
  while (step > 0) {
    if (known + step <= limit && holds(known, known + step)) known += step;
    else step = step === 1 ? 0 : Math.ceil(step / 2);
  }
  return known;
}

/** Where a block starts, or the file ends. */
function startOf({ starts, text }: Tree, i: number): number {
  return starts[i] ?? text.length;
}

/** A file too long to be read, as one block that says so. */
function unread(uri: string, text: string, long: { readonly has: number; readonly what: 'characters' | 'lines at its left edge' }): Tree {
  const problems: Problem[] = [];
  const block: Block = { uri, text, lineEnds: 0, statements: [], comments: [], problems, held: undefined };
  problems.push(problem(longFile, { block, start: 0, end: 1 }, long));
  return { uri, text, blocks: [block], starts: [0] };
}

function isUnread({ blocks: [first] }: Tree): boolean {
  return first?.problems[0]?.code === longFile.code;
}

/** Where each block of a stretch starts, the stretch itself first: at every line whose first character is neither white space nor `#`. */
function blockStarts(text: string, from = 0, to = text.length): number[] {
  const starts = [from];
  let at = from;
  while ((at = nextLine(text, at)) < to) if (isStart(text, at)) starts.push(at);
  return starts;
}

function isStart(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return text.charCodeAt(at - 1) === 10 && code !== 32 && code !== 9 && code !== 35 && code !== 10 && code !== 13 && !isSpaceLike(code);
}

function nextLine(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  return end < 0 ? text.length : end + 1;
}

/** Places of a few spans are looked for in the list; of more, an index pays. A keystroke makes a new tree and asks for a few. */
const FEW_SPANS = 24;

interface Asked {
  times: number;
  index: ReadonlyMap<Block, number> | undefined;
}

const asked = new WeakMap<Tree, Asked>();

/** File offsets of a span, or undefined where its block is not (any more) in this tree. */
export function rangeIn(tree: Tree, { block, start, end }: Span): Range | undefined {
  const from = tree.starts[placeOf(tree, block)];
  return from === undefined ? undefined : { start: from + start, end: from + end };
}

/** The place of a block in a tree; -1 where it is not in it. */
function placeOf(tree: Tree, block: Block): number {
  let found = asked.get(tree);
  if (found === undefined) asked.set(tree, (found = { times: 0, index: undefined }));
  if (found.index === undefined && found.times++ < FEW_SPANS) return tree.blocks.indexOf(block);
  found.index ??= new Map(tree.blocks.map((one, i) => [one, i]));
  return found.index.get(block) ?? -1;
}

/** The text of a tree; always the text it was parsed from. */
export function print(tree: Tree): string {
  return tree.blocks.map((block) => block.text).join('');
}
