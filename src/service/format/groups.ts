import type { Block, Range, Tree } from '../../language/index.js';
import type { TextEdit } from '../feature-types.js';
import { editsOf } from './edits.js';
import { wantedLines, type WantedLine } from './wanted.js';

/** Neighbouring blocks that can be put into columns without looking at any other: one, or one-line blocks of one kind. */
export interface Group {
  /** Where it starts in the file. */
  readonly start: number;
  readonly text: string;
  readonly lines: readonly WantedLine[];
  /** The edits of all its lines, by the group's own offsets. */
  readonly edits: readonly TextEdit[];
}

interface Kept extends Omit<Group, 'start'> {
  readonly blocks: readonly Block[];
}

const kept = new WeakMap<Block, Kept>();

/** The groups of a file, or those that a range touches. Kept by the identity of their blocks. */
export function* groupsOf({ blocks, starts, text }: Tree, near?: Range): Generator<Group> {
  for (let from = near === undefined ? 0 : firstNear(blocks, starts, near.start); from < blocks.length;) {
    const start = starts[from] as number;
    if (near !== undefined && start > near.end) return;
    let to = from + 1;
    while (to < blocks.length && joins(blocks[to - 1] as Block, blocks[to] as Block)) to++;
    yield { start, ...groupOf(blocks, from, to, text.slice(start, starts[to] ?? text.length)) };
    from = to;
  }
}

function groupOf(blocks: readonly Block[], from: number, to: number, text: string): Kept {
  const first = blocks[from] as Block;
  const before = kept.get(first);
  if (before?.blocks.length === to - from && before.blocks.every((block, i) => block === blocks[from + i])) return before;
  const own = blocks.slice(from, to);
  const lines = wantedLines(own, text);
  const made = { blocks: own, text, lines, edits: editsOf(text, lines) };
  kept.set(first, made);
  return made;
}

/** Lines at the left edge make a run only where they follow each other without a line between. */
function joins(above: Block, below: Block): boolean {
  if (above.lineEnds !== 1) return false;
  const word = above.statements[0]?.tokens[0]?.text;
  return word !== undefined && word === below.statements[0]?.tokens[0]?.text;
}

function firstNear(blocks: readonly Block[], starts: readonly number[], offset: number): number {
  let first = Math.max(0, starts.findLastIndex((start) => start <= offset));
  while (first > 0 && joins(blocks[first - 1] as Block, blocks[first] as Block)) first--;
  return first;
}
