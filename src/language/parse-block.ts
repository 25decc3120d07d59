import { sharedLexer } from './lexer.js';
import { Line } from './line.js';
import { limits } from './limits.js';
import { exact } from './exact.js';
import { hidden, isSpaceLike, plainForm } from './look-alikes.js';
import { problem } from './problem.js';
import * as rules from './syntax-rules.js';
import type { Block, Comment, Problem, Span, Statement } from './tree.js';

/** A line that later ones may stand below. */
interface Level {
  /** Undefined where the line was left out: nothing is told about what stands below it, since the line itself has a message. */
  statement: Line | undefined;
  indent: number;
  lead: string;
  tabbed: boolean;
  /** Its indentation, or that of a line it stands below, has a message: it is no measure for the lines that follow. */
  isDoubted: boolean;
  /** How many lines were closed before it and wait for the line that they stand below. */
  closedBefore: number;
}

const NO_STATEMENTS: readonly Statement[] = [];
const NO_COMMENTS: readonly Comment[] = [];
const NO_PROBLEMS: readonly Problem[] = [];

/** One parser reads all blocks, one after the other; between blocks it knows nothing but words it has seen. */
let parser: BlockParser | undefined;

/** Parses one block. `first` says whether it starts the file, where a byte order mark is passed over in silence. */
export function parseBlock(uri: string, text: string, first: boolean): Block {
  return (parser ??= new BlockParser()).parse(uri, text, first && text.charCodeAt(0) === 0xfeff ? 1 : 0);
}

class BlockParser {
  private readonly lexer = sharedLexer();
  private readonly levels: Level[] = [];
  private depth = 0;
  /** Lines below which nothing more can stand, and that still wait for the line that they stand below. */
  private readonly closed: Statement[] = [];
  private closedCount = 0;
  private comments: Comment[] | undefined;
  private problems: Problem[] | undefined;
  private block: { -readonly [of in keyof Block]: Block[of] } = blockOf('', '');
  private text = '';
  private plain = true;
  private line = 0;
  /** Whether the line that is read is indented with other characters than the lines around it. */
  private clashes = false;
  /** The indentation that most of the block's lines have where that is spaces; null where it is tabs, undefined until it is asked. */
  private usual: string | null | undefined;

  parse(uri: string, text: string, from: number): Block {
    this.block = blockOf(uri, text);
    this.text = text;
    this.plain = !/[^\t\n -~]/.test(text);
    this.depth = 0;
    this.closedCount = 0;
    this.comments = undefined;
    this.problems = undefined;
    this.line = 0;
    this.usual = undefined;
    let at = from;
    while (at < text.length) {
      const newline = text.indexOf('\n', at);
      let end = newline < 0 ? text.length : newline;
      if (end > at && text.charCodeAt(end - 1) === 13) end--;
      this.readLine(at, end);
      if (newline < 0) break;
      this.line++;
      at = newline + 1;
    }
    while (this.depth > 0) this.close();
    const { block } = this;
    block.lineEnds = this.line;
    block.statements = this.closed.slice(0, this.closedCount);
    if (this.comments !== undefined) block.comments = exact(this.comments);
    if (this.problems !== undefined) block.problems = exact(this.problems);
    return block;
  }

  private readLine(start: number, end: number): void {
    const { text } = this;
    this.clashes = false;
    let indentEnd = start;
    let tabs = 0;
    let oddSpaces = 0;
    for (let code = text.charCodeAt(indentEnd); indentEnd < end && (code === 32 || code === 9 || isSpaceLike(code)); code = text.charCodeAt(++indentEnd)) {
      if (code === 9) tabs++;
      else if (code !== 32) oddSpaces++;
    }
    const indent = indentEnd - start;
    if (end - start > limits.lineLength) {
      this.tell(problem(rules.longLine, this.span(start, end), { length: end - start }));
      if (indent < limits.lineLength) this.leaveOut(indent, text.slice(start, indentEnd), tabs > 0);
      return;
    }
    const tokens = this.lexer.read(text, indentEnd, end, this.line);
    const { comment, openText } = this.lexer;
    if (comment !== undefined) (this.comments ??= []).push(comment);
    if (!this.plain && !isPlain(text, indentEnd, end)) this.reportCharacters(start, end, tokens);
    if (openText !== undefined) this.tell(problem(rules.openText, this.span(openText, end), undefined));
    if (tokens.length === 0) return;
    if (oddSpaces > 0) this.reportStrange(start, indentEnd);

    const lead = indent === 0 ? '' : text.slice(start, indentEnd);
    if (this.isLeftOut(start, indent, tabs)) {
      this.leaveOut(indent, lead, tabs > 0);
      return;
    }
    this.open(new Line(this.block, tokens, comment, indent, this.line, indentEnd, end), indent, lead, tabs > 0);
  }

  private get top(): Level | undefined {
    return this.depth === 0 ? undefined : this.levels[this.depth - 1];
  }

  private open(statement: Line | undefined, indent: number, lead: string, tabbed: boolean): void {
    const level = this.levels[this.depth];
    const isDoubted = this.clashes || this.top?.isDoubted === true;
    if (level === undefined) {
      this.levels.push({ statement, indent, lead, tabbed, isDoubted, closedBefore: this.closedCount });
    } else {
      level.statement = statement;
      level.indent = indent;
      level.lead = lead;
      level.tabbed = tabbed;
      level.isDoubted = isDoubted;
      level.closedBefore = this.closedCount;
    }
    this.depth++;
  }

  /** Closes the innermost line: what was closed since it was opened stands below it. What a line that was left out has below it is lost with it. */
  private close(): Level {
    const level = this.levels[--this.depth] as Level;
    const { statement, closedBefore } = level;
    if (statement !== undefined && this.closedCount > closedBefore) statement.children = this.closed.slice(closedBefore, this.closedCount);
    this.closedCount = closedBefore;
    if (statement !== undefined) this.closed[this.closedCount++] = statement;
    return level;
  }

  /** Closes what a line is no part of, and says what is wrong with its place; true where it can't be told what it belongs to. */
  private isLeftOut(start: number, indent: number, tabs: number): boolean {
    let closed: Level | undefined;
    while (this.depth > 0 && (this.top as Level).indent >= indent) closed = this.close();
    // A level is written over by the next line that is opened in its place; what is asked of it below is asked before.
    const clashes = (this.clashes = indent > 0 && ((tabs > 0 && tabs < indent) || this.hasOtherStyle(tabs > 0, closed)));
    // How wide a tab is nobody knows: the line belongs to the nearest line whose indentation it repeats.
    while (this.depth > 1 && (clashes || (this.top as Level).isDoubted) && !this.text.startsWith((this.top as Level).lead, start)) closed = this.close();
    const parent = this.top;
    if (parent !== undefined && parent.statement === undefined) return true;
    if (indent > 0 && parent === undefined && closed === undefined) {
      this.tell(problem(rules.strayIndent, this.span(start, start + indent), undefined));
      return true;
    }
    if (this.depth >= limits.depth) {
      this.tell(problem(rules.tooDeep, this.span(start, start + indent), undefined));
      return true;
    }
    if (clashes) {
      const step = parent?.tabbed === true ? '\t' : ((parent?.lead ?? '') === '' ? this.spacesOfMost() : null) ?? '  ';
      const plain = closed === undefined || closed.isDoubted ? `${parent?.lead ?? ''}${step}` : closed.lead;
      this.tell(problem(rules.mixedIndent, this.span(start, start + indent), { plain, own: tabs === indent ? 'tabs' : tabs === 0 ? 'spaces' : 'both' }));
    } else if (closed !== undefined && !closed.isDoubted && closed.indent > indent && indent > 0) {
      this.tell(problem(rules.unevenIndent, this.span(start, start + indent), { nearest: closed.lead }));
    }
    return false;
  }

  /** True where an indented line that this one belongs to, or just followed, uses the other character. */
  private hasOtherStyle(tabbed: boolean, closed: Level | undefined): boolean {
    for (let i = 0; i < this.depth; i++) {
      const { lead, tabbed: other, isDoubted } = this.levels[i] as Level;
      if (lead !== '' && !isDoubted && other !== tabbed) return true;
    }
    if (closed !== undefined && closed.lead !== '' && !closed.isDoubted) return closed.tabbed !== tabbed;
    // The first indented line, or one behind such as are marked: a tab among spaces is the odd one out, wherever it stands.
    return tabbed && (this.depth < 2 || (this.top as Level).isDoubted) && this.spacesOfMost() !== null;
  }

  /** The first indentation by spaces, where more lines of the block are indented by spaces than by tabs; null where not. */
  private spacesOfMost(): string | null {
    if (this.usual === undefined) {
      const leads = [...this.text.matchAll(/^(?:\t+| +)(?=[^\s#])/gm)].map(([lead]) => lead);
      const spaces = leads.filter((lead) => lead.startsWith(' '));
      const [first] = spaces;
      this.usual = first !== undefined && 2 * spaces.length > leads.length ? first : null;
    }
    return this.usual;
  }

  /** A line that can't be read takes the lines below it along: they belong to it and to nothing else. */
  private leaveOut(indent: number, lead: string, tabbed: boolean): void {
    while (this.depth > 0 && (this.top as Level).indent >= indent) this.close();
    const { top } = this;
    if (top !== undefined && top.statement === undefined) return;
    this.open(undefined, indent, lead, tabbed);
  }

  private reportCharacters(start: number, end: number, tokens: Statement['tokens']): void {
    // One message for one line: a pasted line can hold dozens. What stops the reading of the line comes first.
    const strange = tokens.find((token) => token.kind === 'strange');
    if (strange !== undefined) {
      this.reportStrange(strange.start, strange.end);
      return;
    }
    const at = this.text.slice(start, end).search(hidden);
    if (at < 0) return;
    const code = this.text.codePointAt(start + at) ?? 0;
    this.tell(problem(rules.hiddenCharacter, this.span(start + at, start + at + (code > 0xffff ? 2 : 1)), { code: `U+${code.toString(16).toUpperCase().padStart(4, '0')}` }));
  }

  private reportStrange(start: number, end: number): void {
    const written = this.text.slice(start, end);
    // In some places a dash stands where there are no cents.
    const plain = plainForm(written)?.replace(/^(\d+)\.-+$/, '$1.00');
    // A single quote would open a text that swallows the rest of the line.
    this.tell(problem(rules.strangeCharacter, this.span(start, end), { written, plain: plain?.split('"').length === 2 ? undefined : plain }));
  }

  /** A block that is nothing but problems is not told of for ever. */
  private tell(one: Problem): void {
    const problems = (this.problems ??= []);
    if (problems.length <= limits.problems) problems.push(one);
  }

  private span(start: number, end: number): Span {
    return { block: this.block, start, end };
  }
}

function blockOf(uri: string, text: string): { -readonly [of in keyof Block]: Block[of] } {
  return { uri, text, lineEnds: 0, statements: NO_STATEMENTS, comments: NO_COMMENTS, problems: NO_PROBLEMS, held: undefined };
}

/** True where every character is printable ASCII or a tab: the usual case, and cheap to tell. */
function isPlain(text: string, from: number, to: number): boolean {
  for (let at = from; at < to; at++) {
    const code = text.charCodeAt(at);
    if (code > 126 || (code < 32 && code !== 9)) return false;
  }
  return true;
}
