import { limits, type Block, type Statement } from '../../language/index.js';
import { fileKinds, readBlock, type Kind } from '../../vocabulary/index.js';
import { alignRun } from './align.js';
import { cellsOf, type Cells } from './cells.js';

/** A line as it is to be written. Line ends are no part of it; offsets are those of its group. */
export interface WantedLine {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly block: Block;
  /** Lines of one run are told apart from others by this; 0 for lines without a run. */
  readonly run: number;
}

/** A line that says something, cut into cells, with the line it stands below. */
interface Placed {
  readonly cells: Cells;
  /** Within the block. */
  readonly line: number;
  readonly parent: Statement | undefined;
}

const top: ReadonlyMap<string, Kind> = new Map(fileKinds.map((kind) => [kind.word, kind]));

/**
 * The lines of some neighbouring blocks as the formatter would write them, in the order of the text. Lines of a block
 * with a fault are missing: nobody knows yet what they are to say.
 */
export function wantedLines(blocks: readonly Block[], text: string): readonly WantedLine[] {
  const bounds = lineBounds(text);
  const wanted: WantedLine[] = [];
  const put = (line: number, written: string, block: Block, run: number) => {
    const bound = bounds[line];
    if (bound !== undefined) wanted.push({ start: bound.start, end: bound.end, text: written, block, run });
  };
  const runs = new Runs();
  let firstLine = 0;
  for (const block of blocks) {
    if (isCertain(block)) {
      const placed: Placed[] = [];
      for (const statement of block.statements) place(statement, undefined, 0, placed, undefined);
      for (const one of placed) runs.add(one, firstLine + one.line, block);
      let next = 0;
      // Behind the last line end stands the next block, unless the file has no line end there.
      const lines = block.lineEnds + (block.text.endsWith('\n') ? 0 : 1);
      for (let line = 0; line < lines; line++) {
        while (next < placed.length && (placed[next] as Placed).line < line) next++;
        const beside = placed[next];
        if (beside?.line === line) continue;
        const { start, end } = bounds[firstLine + line] as Bound;
        put(firstLine + line, bareLine(text.slice(start, end), beside ?? placed[placed.length - 1]), block, 0);
      }
    }
    firstLine += block.lineEnds;
  }
  runs.all.forEach((run, i) => {
    const texts = alignRun(run.map(({ placed }) => placed.cells));
    // Beside a very long line the others could get too long to be read.
    if (texts.some((one) => one.length > limits.lineLength)) return;
    run.forEach(({ line, block }, k) => put(line, texts[k] as string, block, i + 1));
  });
  return wanted.sort((a, b) => a.start - b.start);
}

/** White space may only be moved where every line was read and none of it carries meaning of its own. */
function isCertain(block: Block): boolean {
  return readBlock(block).problems.length === 0;
}

/** Neighbouring lines that are aligned together. */
class Runs {
  readonly all: { readonly placed: Placed; readonly line: number; readonly block: Block }[][] = [];
  private readonly open = new Map<Statement | undefined, (typeof this.all)[number]>();
  private lastLine = -2;

  add(placed: Placed, line: number, block: Block): void {
    const run = this.open.get(placed.parent);
    const last = run?.[run.length - 1];
    // A line with lines below it ends the run at the left edge; deeper, its neighbours still belong together.
    const joins = last !== undefined && line === this.lastLine + 1 && (placed.parent !== undefined || (last.line === line - 1 && last.placed.cells.head === placed.cells.head));
    if (joins) run?.push({ placed, line, block });
    else {
      const fresh = [{ placed, line, block }];
      this.all.push(fresh);
      this.open.set(placed.parent, fresh);
    }
    this.lastLine = line;
  }
}

function place(statement: Statement, parent: Statement | undefined, depth: number, out: Placed[], under: Kind | undefined): void {
  const head = statement.tokens[0]?.text ?? '';
  const kind = (under === undefined ? top : under.childByWord).get(head);
  out.push({ cells: { ...cellsOf(statement, kind, under), indent: depth }, line: statement.line, parent });
  for (const child of statement.children) place(child, statement, depth + 1, out, kind);
}

/** A comment on a line of its own stays at the left edge, or goes with the next line below; a blank line loses its spaces. */
function bareLine(written: string, beside: Placed | undefined): string {
  const text = written.replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, '');
  const isIndented = text !== '' && /^[ \t]/.test(written);
  return isIndented ? `${'  '.repeat(beside?.cells.indent ?? 0)}${text}` : text;
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
