import type { Block, Range, Statement, Tree } from '../../language/index.js';
import { fileKinds, type Kind } from '../../vocabulary/index.js';
import type { TextEdit } from '../feature-types.js';
import { alignRun } from './align.js';
import { cellsOf, type Cells } from './cells.js';

const top: ReadonlyMap<string, Kind> = new Map(fileKinds.map((kind) => [kind.word, kind]));

/**
 * The edits that put a file, or the lines of it that touch a range, into columns. Only white space changes: every
 * word, comment, blank line and line end stays. A block whose lines can't be told apart for certain is left as it is.
 */
export function formatEdits(tree: Tree, only?: Range): TextEdit[] {
  const wanted = linesOf(tree);
  const edits: TextEdit[] = [];
  for (const { start, end, text } of wanted) {
    if (only !== undefined && (end < only.start || start > only.end)) continue;
    const edit = smallest(tree.text.slice(start, end), text, start);
    if (edit !== undefined) edits.push(edit);
  }
  return edits;
}

interface WantedLine {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** A line with its place in the tree of lines; neighbours without a blank line or a comment between make a run. */
interface Placed {
  readonly cells: Cells;
  readonly line: number;
  readonly parent: Statement | undefined;
}

function linesOf(tree: Tree): WantedLine[] {
  const bounds = lineBounds(tree.text);
  const wanted: WantedLine[] = [];
  const placed: Placed[] = [];
  let firstLine = 0;
  for (const block of tree.blocks) {
    if (isCertain(block)) {
      const own: Placed[] = [];
      for (const statement of block.statements) place(statement, undefined, 0, firstLine, own);
      placed.push(...own);
      wanted.push(...commentLines(block, own, firstLine, bounds, tree.text));
    }
    firstLine += block.lineEnds;
  }
  for (const run of runsOf(placed)) {
    alignRun(run.map((one) => one.cells)).forEach((text, i) => {
      const bound = bounds[(run[i] as Placed).line];
      if (bound !== undefined) wanted.push({ ...bound, text });
    });
  }
  return wanted.sort((a, b) => a.start - b.start);
}

function place(statement: Statement, parent: Statement | undefined, depth: number, firstLine: number, out: Placed[], under?: Kind): void {
  const head = statement.tokens[0]?.text ?? '';
  const isFact = under !== undefined && !under.childByWord.has(head);
  const kind = isFact ? undefined : (under === undefined ? top : under.childByWord).get(head);
  out.push({ cells: { ...cellsOf(statement, kind, under), indent: depth }, line: firstLine + statement.line, parent });
  for (const child of statement.children) place(child, statement, depth + 1, firstLine, out, kind);
}

/** White space may only be moved where every line was read and none of it carries meaning of its own. */
function isCertain(block: Block): boolean {
  return block.problems.length === 0;
}

function runsOf(placed: readonly Placed[]): Placed[][] {
  const runs: Placed[][] = [];
  const openRuns = new Map<Statement | undefined, Placed[]>();
  let lastLine = -2;
  for (const one of placed) {
    const run = openRuns.get(one.parent);
    const last = run?.[run.length - 1];
    // A line with lines below it ends the run at the left edge; deeper, its neighbours still belong together.
    const joins = last !== undefined && one.line === lastLine + 1 && (one.parent !== undefined || (last.line === one.line - 1 && last.cells.head === one.cells.head));
    if (joins) run?.push(one);
    else {
      const fresh = [one];
      runs.push(fresh);
      openRuns.set(one.parent, fresh);
    }
    lastLine = one.line;
  }
  return runs;
}

/** Comments on lines of their own: at the left edge they stay there; indented ones go with the next line below. */
function commentLines(block: Block, placed: readonly Placed[], firstLine: number, bounds: readonly Bound[], text: string): WantedLine[] {
  const withStatement = new Set(placed.map((one) => one.line));
  return block.comments.flatMap((comment) => {
    const line = firstLine + comment.line;
    const bound = bounds[line];
    if (bound === undefined || withStatement.has(line)) return [];
    const written = text.slice(bound.start, bound.end);
    const indented = /^\s/.test(written);
    const next = placed.find((one) => one.line > line) ?? placed[placed.length - 1];
    const indent = indented && next !== undefined ? '  '.repeat(next.cells.indent) : '';
    return [{ ...bound, text: `${indent}${written.trim()}` }];
  });
}

interface Bound {
  readonly start: number;
  readonly end: number;
}

/** Start and end of each line, without its line end, and without a byte order mark. */
function lineBounds(text: string): Bound[] {
  const bounds: Bound[] = [];
  let start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  for (;;) {
    const newline = text.indexOf('\n', start);
    const stop = newline < 0 ? text.length : newline;
    bounds.push({ start, end: stop > start && text.charCodeAt(stop - 1) === 13 ? stop - 1 : stop });
    if (newline < 0) return bounds;
    start = newline + 1;
  }
}

/** The shortest replacement that turns one line into the other. */
function smallest(before: string, after: string, start: number): TextEdit | undefined {
  if (before === after) return undefined;
  let head = 0;
  while (head < before.length && head < after.length && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < before.length - head && tail < after.length - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  return { range: { start: start + head, end: start + before.length - tail }, text: after.slice(head, after.length - tail) };
}

/** A text with edits made; edits must not overlap. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  return [...edits].sort((a, b) => b.range.start - a.range.start).reduce((now, { range, text: put }) => now.slice(0, range.start) + put + now.slice(range.end), text);
}
