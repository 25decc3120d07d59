import { lexLine } from './lexer.js';
import { limits } from './limits.js';
import { exact } from './exact.js';
import { hidden, isSpaceLike, plainForm } from './look-alikes.js';
import { problem } from './problem.js';
import * as rules from './syntax-rules.js';
import type { Block, Comment, Problem, Span, Statement } from './tree.js';

interface Open {
  readonly statement: Parent;
  readonly indent: number;
  readonly lead: string;
  readonly tabbed: boolean;
  /** Nothing is told about what stands below a line that was left out: the line itself has a message. */
  readonly leftOut: boolean;
}

type Parent = Statement & { children: Statement[] };

/** Most lines have none below; those that have get a list of their own. */
const NONE: Statement[] = [];

function addTo(parent: Parent, statement: Statement): void {
  if (parent.children === NONE) parent.children = [statement];
  else parent.children.push(statement);
}

/** Parses one block. `first` says whether it starts the file, where a byte order mark is passed over in silence. */
export function parseBlock(uri: string, text: string, first: boolean): Block {
  return new BlockParser(uri, text).parse(first && text.charCodeAt(0) === 0xfeff ? 1 : 0);
}

class BlockParser {
  private readonly statements: Statement[] = [];
  private readonly comments: Comment[] = [];
  private readonly problems: Problem[] = [];
  private readonly block: { -readonly [of in keyof Block]: Block[of] };
  private readonly open: Open[] = [];
  private line = 0;

  constructor(
    uri: string,
    private readonly text: string,
  ) {
    this.block = { uri, text, lineEnds: 0, statements: this.statements, comments: this.comments, problems: this.problems };
  }

  parse(from: number): Block {
    const { text } = this;
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
    this.block.lineEnds = this.line;
    this.block.statements = exact(this.statements);
    this.block.comments = exact(this.comments);
    this.block.problems = exact(this.problems);
    return this.block;
  }

  private readLine(start: number, end: number): void {
    const { text } = this;
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
    const lexed = lexLine(text, indentEnd, end, this.line);
    if (lexed.comment !== undefined) this.comments.push(lexed.comment);
    if (!isPlain(text, indentEnd, end)) this.reportCharacters(start, end, lexed.tokens);
    if (lexed.openText !== undefined) this.tell(problem(rules.openText, this.span(lexed.openText, end), undefined));
    if (lexed.tokens.length === 0) return;
    if (oddSpaces > 0) this.reportStrange(start, indentEnd);

    const lead = indent === 0 ? '' : text.slice(start, indentEnd);
    const parent = this.findParent(start, indent, tabs);
    if (parent === 'left out') {
      this.leaveOut(indent, lead, tabs > 0);
      return;
    }
    const statement: Parent = { block: this.block, tokens: lexed.tokens, comment: lexed.comment, indent, line: this.line, children: NONE };
    if (parent === undefined) this.statements.push(statement);
    else addTo(parent.statement, statement);
    this.open.push({ statement, indent, lead, tabbed: tabs > 0, leftOut: false });
  }

  /** Closes what this line is no part of and returns what it belongs to. */
  private findParent(start: number, indent: number, tabs: number): Open | undefined | 'left out' {
    const { open, text } = this;
    let closed: Open | undefined;
    while (open.length > 0 && (open[open.length - 1] as Open).indent >= indent) closed = open.pop();
    const clashes = indent > 0 && ((tabs > 0 && tabs < indent) || this.hasOtherStyle(tabs > 0, closed));
    // How wide a tab is nobody knows: the line belongs to the nearest line whose indentation it repeats.
    while (clashes && open.length > 1 && !text.startsWith((open[open.length - 1] as Open).lead, start)) closed = open.pop();
    const parent = open[open.length - 1];
    if (parent?.leftOut === true) return 'left out';
    if (indent > 0 && parent === undefined && closed === undefined) {
      this.tell(problem(rules.strayIndent, this.span(start, start + indent), undefined));
      return 'left out';
    }
    if (open.length >= limits.depth) {
      this.tell(problem(rules.tooDeep, this.span(start, start + indent), undefined));
      return 'left out';
    }
    if (clashes) {
      this.tell(problem(rules.mixedIndent, this.span(start, start + indent), { plain: closed?.lead ?? `${parent?.lead ?? ''}  ` }));
    } else if (closed !== undefined && closed.indent > indent && indent > 0) {
      this.tell(problem(rules.unevenIndent, this.span(start, start + indent), { nearest: closed.lead }));
    }
    return parent;
  }

  /** True where an indented line that this one belongs to, or just followed, uses the other character. */
  private hasOtherStyle(tabbed: boolean, closed: Open | undefined): boolean {
    for (const other of this.open) if (other.lead !== '' && other.tabbed !== tabbed) return true;
    return closed !== undefined && closed.lead !== '' && closed.tabbed !== tabbed;
  }

  /** A line that can't be read takes the lines below it along: they belong to it and to nothing else. */
  private leaveOut(indent: number, lead: string, tabbed: boolean): void {
    const { open } = this;
    while (open.length > 0 && (open[open.length - 1] as Open).indent >= indent) open.pop();
    if (open[open.length - 1]?.leftOut === true) return;
    open.push({ statement: { block: this.block, tokens: [], comment: undefined, indent, line: this.line, children: NONE }, indent, lead, tabbed, leftOut: true });
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
    this.tell(problem(rules.strangeCharacter, this.span(start, end), { written, plain: plainForm(written) }));
  }

  /** A block that is nothing but problems is not told of for ever. */
  private tell(one: Problem): void {
    if (this.problems.length <= limits.problems) this.problems.push(one);
  }

  private span(start: number, end: number): Span {
    return { block: this.block, start, end };
  }
}

/** True where every character is printable ASCII or a tab: the usual case, and cheap to tell. */
function isPlain(text: string, from: number, to: number): boolean {
  for (let at = from; at < to; at++) {
    const code = text.charCodeAt(at);
    if (code > 126 || (code < 32 && code !== 9)) return false;
  }
  return true;
}
