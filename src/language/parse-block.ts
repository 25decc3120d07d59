import { lexLine } from './lexer.js';
import { limits } from './limits.js';
import { hidden, isSpaceLike, plainForm } from './look-alikes.js';
import { problem } from './problem.js';
import * as rules from './syntax-rules.js';
import type { Block, Comment, Problem, Span, Statement } from './tree.js';

interface Open {
  readonly statement: Statement & { children: Statement[] };
  readonly indent: number;
  readonly lead: string;
  /** Nothing is told about what stands below a line that was left out: the line itself has a message. */
  readonly leftOut: boolean;
}

/** Parses one block. `first` says whether it starts the file, where a byte order mark is passed over in silence. */
export function parseBlock(uri: string, text: string, first: boolean): Block {
  const statements: Statement[] = [];
  const comments: Comment[] = [];
  const problems: Problem[] = [];
  const block: Block = { uri, text, lineEnds: 0, statements, comments, problems };
  const span = (start: number, end: number): Span => ({ block, start, end });
  const open: Open[] = [];
  let lineNumber = 0;
  let at = first && text.charCodeAt(0) === 0xfeff ? 1 : 0;

  while (at < text.length) {
    const newline = text.indexOf('\n', at);
    const next = newline < 0 ? text.length : newline + 1;
    let end = newline < 0 ? text.length : newline;
    if (end > at && text.charCodeAt(end - 1) === 13) end--;
    readLine(at, end);
    if (newline >= 0) lineNumber++;
    at = next;
  }
  (block as { lineEnds: number }).lineEnds = lineNumber;
  return block;

  function readLine(start: number, end: number): void {
    let indentEnd = start;
    let tabs = 0;
    let oddSpaces = 0;
    for (let code = text.charCodeAt(indentEnd); indentEnd < end && (code === 32 || code === 9 || isSpaceLike(code)); code = text.charCodeAt(++indentEnd)) {
      if (code === 9) tabs++;
      else if (code !== 32) oddSpaces++;
    }
    if (end - start > limits.lineLength) {
      problems.push(problem(rules.longLine, span(start, end), { length: end - start }));
      if (indentEnd - start < limits.lineLength) leaveOut(indentEnd - start, text.slice(start, indentEnd));
      return;
    }
    const lexed = lexLine(text, indentEnd, end, lineNumber);
    if (lexed.comment !== undefined) comments.push(lexed.comment);
    if (!isPlain(text, indentEnd, end)) reportCharacters(start, end, lexed.tokens);
    if (lexed.openText !== undefined) problems.push(problem(rules.openText, span(lexed.openText, end), undefined));
    if (lexed.tokens.length === 0) return;
    if (oddSpaces > 0) reportStrange(start, indentEnd);

    const indent = indentEnd - start;
    const parent = findParent(start, indentEnd, indent, tabs);
    if (parent === 'left out') return leaveOut(indent, text.slice(start, indentEnd));
    const children: Statement[] = [];
    const statement = { block, tokens: lexed.tokens, comment: lexed.comment, indent, line: lineNumber, children };
    if (parent === undefined) statements.push(statement);
    else parent.statement.children.push(statement);
    open.push({ statement, indent, lead: text.slice(start, indentEnd), leftOut: false });
  }

  /** Closes what this line is no part of and returns what it belongs to. */
  function findParent(start: number, indentEnd: number, indent: number, tabs: number): Open | undefined | 'left out' {
    let closed: Open | undefined;
    while (open.length > 0 && (open[open.length - 1] as Open).indent >= indent) closed = open.pop();
    const lead = span(start, indentEnd);
    const otherStyle = (other: Open) => other.lead !== '' && other.lead.includes('\t') !== tabs > 0;
    const clashes = indent > 0 && ((tabs > 0 && tabs < indent) || open.some(otherStyle) || (closed !== undefined && otherStyle(closed)));
    // How wide a tab is nobody knows: the line belongs to the nearest line whose indentation it repeats.
    while (clashes && open.length > 1 && !text.startsWith((open[open.length - 1] as Open).lead, start)) closed = open.pop();
    const parent = open[open.length - 1];
    if (parent?.leftOut === true) return 'left out';
    if (indent > 0 && parent === undefined && closed === undefined) {
      problems.push(problem(rules.strayIndent, lead, undefined));
      return 'left out';
    } else if (open.length >= limits.depth) {
      problems.push(problem(rules.tooDeep, lead, undefined));
      return 'left out';
    } else if (clashes) {
      problems.push(problem(rules.mixedIndent, lead, { plain: closed?.lead ?? `${parent?.lead ?? ''}  ` }));
    } else if (closed !== undefined && closed.indent > indent && indent > 0) {
      problems.push(problem(rules.unevenIndent, lead, { nearest: closed.lead }));
    }
    return parent;
  }

  /** A line that can't be read takes the lines below it along: they belong to it and to nothing else. */
  function leaveOut(indent: number, lead: string): void {
    while (open.length > 0 && (open[open.length - 1] as Open).indent >= indent) open.pop();
    if (open[open.length - 1]?.leftOut === true) return;
    open.push({ statement: { block, tokens: [], comment: undefined, indent, line: lineNumber, children: [] }, indent, lead, leftOut: true });
  }

  function reportCharacters(start: number, end: number, tokens: Statement['tokens']): void {
    // One message for one line: a pasted line can hold dozens. What stops the reading of the line comes first.
    const strange = tokens.find((token) => token.kind === 'strange');
    if (strange !== undefined) return reportStrange(strange.start, strange.end);
    const at = text.slice(start, end).search(hidden);
    if (at < 0) return;
    const code = `U+${text.charCodeAt(start + at).toString(16).toUpperCase().padStart(4, '0')}`;
    problems.push(problem(rules.hiddenCharacter, span(start + at, start + at + 1), { code }));
  }

  function reportStrange(start: number, end: number): void {
    const written = text.slice(start, end);
    problems.push(problem(rules.strangeCharacter, span(start, end), { written, plain: plainForm(written) }));
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
