import type { Statement, Token, Tree } from '../../language/index.js';
import { locate, type At } from '../at.js';

/** The place of the cursor on its line: the word that a completion replaces, and what stands before and behind it. */
export interface Here extends At {
  readonly tree: Tree;
  /** Start and text of the line, within the block. */
  readonly lineStart: number;
  readonly line: string;
  readonly before: readonly Token[];
  readonly behind: readonly Token[];
  /** What is replaced, within the block; empty where the cursor stands in white space. */
  readonly word: { readonly start: number; readonly end: number };
  /** True on a date, in whose place only another can stand. */
  readonly onDate: boolean;
  /** The day on which it is asked, where that is known. */
  readonly today: string | undefined;
}

/** A place in a file, and the day (YYYY-MM-DD) on which what could stand there is asked. */
export interface Asked {
  readonly offset: number;
  readonly today: string | undefined;
}

/** Undefined where nothing is to be offered: in a comment, a text, a figure, or before a line's first word. */
export function hereAt(tree: Tree, { offset, today }: Asked): Here | undefined {
  const at = locate(tree, offset);
  if (at === undefined) return undefined;
  const { block, start, statement } = at;
  const local = Math.min(offset - start, block.text.length);
  const lineStart = block.text.lastIndexOf('\n', local - 1) + 1;
  const newline = block.text.indexOf('\n', local);
  const line = block.text.slice(lineStart, newline < 0 ? undefined : newline).replace(/\r$/, '');
  if (local > lineStart + line.length || isInComment(at, local)) return undefined;
  if (statement === undefined) {
    if (line.trim() !== '' || wouldTake(block.text.slice(lineStart + line.length), local - lineStart)) return undefined;
    return { ...at, tree, lineStart, line, today, before: [], behind: [], word: { start: local, end: lineStart + line.length }, onDate: false };
  }
  const tokens = statement.tokens;
  if (local < (tokens[0] as Token).start) return undefined;
  const touched = tokens.filter((token) => token.start <= local && local <= token.end && token.kind !== 'mark');
  const word = touched.find((token) => token.kind === 'word' || token.kind === 'date');
  if (word === undefined && touched.length > 0) return undefined;
  const range = word ?? { start: local, end: local };
  return {
    ...at, tree, lineStart, line, today, word: { start: range.start, end: range.end }, onDate: word?.kind === 'date',
    before: tokens.filter((token) => token.end <= range.start && token !== word),
    behind: tokens.filter((token) => token.start >= range.end && token !== word),
  };
}

/** A new line would take the deeper lines that follow away from the line that they belong to. */
function wouldTake(below: string, indent: number): boolean {
  const next = /^(?:[ \t]*(?:#[^\n]*)?\r?\n)*([ \t]*)[^\s#]/.exec(below);
  return next !== null && (next[1] as string).length > indent;
}

function isInComment({ block }: At, local: number): boolean {
  return block.comments.some((comment) => comment.start < local && local <= comment.end);
}

/** The line's own text in front of its first word; a new line below it starts with the same and a step more. */
export function leadOf({ line }: Here): string {
  return /^\s*/.exec(line)?.[0] ?? '';
}

export function stepOf(lead: string): string {
  return lead.includes('\t') ? '\t' : '  ';
}

/** A line above, as it is written. */
export function headText({ block, tokens, indent }: Statement): string {
  const first = tokens[0] as Token;
  return block.text.slice(first.start - indent, (tokens[tokens.length - 1] as Token).end);
}
