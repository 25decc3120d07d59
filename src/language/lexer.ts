import { closesTitle, opensTitle } from './look-alikes.js';
import type { Comment } from './tree.js';
import type { Token, TokenKind } from './token.js';
import { WordTable } from './word-table.js';

const TAB = 9, SPACE = 32, QUOTE = 34, HASH = 35, PERCENT = 37, COMMA = 44, HYPHEN = 45, POINT = 46, SLASH = 47, BACKSLASH = 92;

const NOTHING: readonly Token[] = [];

/**
 * Splits lines into tokens. One lexer reads any number of lines, one after the other: what the last line held is in its
 * fields until the next one, and lists are made only once it is known how long they are.
 */
class Lexer {
  /** From `#` to the end of the line. */
  comment: Comment | undefined;
  /** The offset of a quote that never closes. */
  openText: number | undefined;
  private readonly found: Token[] = [];
  private count = 0;
  private readonly words = new WordTable();

  /** Splits `text` from `from` to `to` (one line without its end). Never throws. */
  read(text: string, from: number, to: number, line: number): readonly Token[] {
    this.comment = undefined;
    this.openText = undefined;
    this.count = 0;
    let at = from;
    while (at < to) {
      const code = text.charCodeAt(at);
      if (code === SPACE || code === TAB) {
        at++;
      } else if (code === HASH) {
        this.comment = { start: at, end: to, line };
        break;
      } else if (code === QUOTE) {
        const end = endOfText(text, at, to);
        const closed = end > at + 1 && text.charCodeAt(end - 1) === QUOTE && !isEscapedAt(text, end - 1, at);
        if (!closed) {
          this.openText = at;
          this.found[this.count++] = { kind: 'text', start: at, end, text: unescaped(text.slice(at + 1, end)), open: true };
          break;
        }
        this.found[this.count++] = { kind: 'text', start: at, end, text: unescaped(text.slice(at + 1, end - 1)) };
        at = end;
      } else if (code === COMMA || code === SLASH || code === PERCENT) {
        this.found[this.count++] = { kind: 'mark', start: at, end: at + 1, text: text[at] as string };
        at++;
      } else if (opensTitle(code)) {
        const end = endOfPrinted(text, at, to);
        this.found[this.count++] = { kind: 'strange', start: at, end, text: text.slice(at, end) };
        at = end;
      } else {
        at = this.readRun(text, at, to);
      }
    }
    return this.count === 0 ? NOTHING : this.found.slice(0, this.count);
  }

  /**
   * Reads a run and returns where it ends: at white space, a quote, a mark or a comment; a comma between two digits stays
   * inside (1,200). What the run is comes out on the way, since nearly every character of a file is read here.
   */
  private readRun(text: string, start: number, to: number): number {
    const first = text.charCodeAt(start);
    let figure = true; // digits, points and commas only
    let dated = isDigit(first); // digits, points and hyphens behind a digit
    let wordLike = isLetter(first); // letters, digits and hyphens behind a letter
    let strange = false;
    let points = 0;
    let hyphens = 0;
    let hash = 0;
    let at = start;
    for (; at < to; at++) {
      const code = text.charCodeAt(at);
      if (at > start) {
        if (code === SPACE || code === TAB || code === QUOTE || code === HASH || code === SLASH || code === PERCENT) break;
        // As in 1,200.00: a comma behind a date or a code ends it.
        if (code === COMMA && !(figure && isDigit(text.charCodeAt(at - 1)) && isDigit(text.charCodeAt(at + 1)))) break;
      }
      hash = (Math.imul(hash, 31) + code) | 0;
      if (isDigit(code)) continue;
      if (isLetter(code)) {
        figure = dated = false;
      } else if (code === HYPHEN) {
        figure = false;
        hyphens++;
      } else if (code === POINT) {
        points++;
        wordLike = false;
      } else {
        figure = figure && code === COMMA;
        dated = wordLike = false;
        if ((code > 126 || code < 33) && !isCurrencySign(code)) strange = true;
      }
    }
    const run = this.words.slice(text, start, at, hash);
    let kind: TokenKind = wordLike ? 'word' : 'mixed';
    if (strange) kind = 'strange';
    else if (dated && hyphens === 0 && points < 2 && text.charCodeAt(at - 1) !== POINT) kind = 'number';
    else if (dated && points === 0 && hyphens > 0 && /^\d{4}-\d\d(-\d\d)?$/.test(run)) kind = 'date';
    this.found[this.count++] = { kind, start, end: at, text: run };
    return at;
  }
}

let shared: Lexer | undefined;

/** The one lexer of the product: it knows nothing between two lines but words it has seen. */
export function sharedLexer(): Lexer {
  return (shared ??= new Lexer());
}

function endOfText(text: string, open: number, to: number): number {
  let at = open + 1;
  while (at < to) {
    const code = text.charCodeAt(at);
    if (code === BACKSLASH) at += 2;
    else if (code === QUOTE) return at + 1;
    else at++;
  }
  return to;
}

/** “A title in the quotes of print” is one mistake, so it is one token. */
function endOfPrinted(text: string, open: number, to: number): number {
  const quote = text[open] as string;
  for (let at = open + 1; at < to; at++) {
    if (!closesTitle(quote, text[at] as string)) continue;
    if (text.charCodeAt(at) !== QUOTE) return at + 1;
    // A plain quote behind a space opens the next title.
    if (text.charCodeAt(at - 1) !== SPACE) return closerBehind(text, at, to, quote) ?? at + 1;
  }
  return to;
}

/** Where a title goes on behind a plain quote, as in “Head 7/8" long”: the end of the quote of print that closes it, before any other opens. */
function closerBehind(text: string, plain: number, to: number, quote: string): number | undefined {
  for (let at = plain + 1; at < to; at++) {
    const code = text.charCodeAt(at);
    if (code === QUOTE || code === HASH || (opensTitle(code) && text.charCodeAt(at - 1) === SPACE)) return undefined;
    if (closesTitle(quote, text[at] as string)) return at + 1;
  }
  return undefined;
}

function isEscapedAt(text: string, at: number, open: number): boolean {
  let slashes = 0;
  for (let i = at - 1; i > open && text.charCodeAt(i) === BACKSLASH; i--) slashes++;
  return slashes % 2 === 1;
}

function unescaped(body: string): string {
  return body.includes('\\') ? body.replace(/\\(["\\])/g, '$1') : body;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** The signs of ISO 10646 for cent, pound, yen and the block of currency signs: wrong at a number, but never a look-alike. */
function isCurrencySign(code: number): boolean {
  return (code >= 0xa2 && code <= 0xa5) || (code >= 0x20a0 && code <= 0x20cf);
}

function isLetter(code: number): boolean {
  return (code >= 97 && code <= 122) || (code >= 65 && code <= 90);
}
