import type { Comment } from './tree.js';
import type { Token, TokenKind } from './token.js';

/** What one line holds. `openText` is the offset of a quote that never closes. */
export interface LexedLine {
  readonly tokens: readonly Token[];
  readonly comment: Comment | undefined;
  readonly openText: number | undefined;
}

const TAB = 9, SPACE = 32, QUOTE = 34, HASH = 35, PERCENT = 37, COMMA = 44, HYPHEN = 45, SLASH = 47, BACKSLASH = 92;
const OPEN_CURLY = 0x201c, CLOSE_CURLY = 0x201d, LOW_CURLY = 0x201e;

/** Tokens of the line at hand. An array that grows by pushes keeps room for more than a line needs; what is kept of it is a copy of its own length. */
const found: Token[] = [];

/** Splits `text` from `from` to `to` (one line without its end) into tokens. Never throws. */
export function lexLine(text: string, from: number, to: number, line: number): LexedLine {
  found.length = 0;
  let at = from;
  while (at < to) {
    const code = text.charCodeAt(at);
    if (code === SPACE || code === TAB) {
      at++;
    } else if (code === HASH) {
      return { tokens: found.slice(), comment: { start: at, end: to, line }, openText: undefined };
    } else if (code === QUOTE) {
      const end = endOfText(text, at, to);
      const closed = end > at + 1 && text.charCodeAt(end - 1) === QUOTE && !isEscapedAt(text, end - 1, at);
      if (!closed) {
        found.push({ kind: 'text', start: at, end, text: unescaped(text.slice(at + 1, end)), open: true });
        return { tokens: found.slice(), comment: undefined, openText: at };
      }
      found.push({ kind: 'text', start: at, end, text: unescaped(text.slice(at + 1, end - 1)) });
      at = end;
    } else if (code === COMMA || code === SLASH || code === PERCENT) {
      found.push({ kind: 'mark', start: at, end: at + 1, text: text[at] as string });
      at++;
    } else if (code === OPEN_CURLY || code === CLOSE_CURLY || code === LOW_CURLY) {
      const end = endOfCurly(text, at, to);
      found.push({ kind: 'strange', start: at, end, text: text.slice(at, end) });
      at = end;
    } else {
      const end = endOfRun(text, at, to);
      const run = text.slice(at, end);
      found.push({ kind: kindOfRun(run), start: at, end, text: run });
      at = end;
    }
  }
  return { tokens: found.slice(), comment: undefined, openText: undefined };
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

/** “A title in curly quotes” is one mistake, so it is one token. */
function endOfCurly(text: string, open: number, to: number): number {
  for (let at = open + 1; at < to; at++) {
    const code = text.charCodeAt(at);
    if (code === CLOSE_CURLY || code === OPEN_CURLY || code === QUOTE) return at + 1;
  }
  return to;
}

function isEscapedAt(text: string, at: number, open: number): boolean {
  let slashes = 0;
  for (let i = at - 1; i > open && text.charCodeAt(i) === BACKSLASH; i--) slashes++;
  return slashes % 2 === 1;
}

function unescaped(body: string): string {
  return body.includes('\\') ? body.replace(/\\(["\\])/g, '$1') : body;
}

/** A run goes on to white space, a quote, a mark or a comment; a comma between two digits stays inside (1,200). */
function endOfRun(text: string, start: number, to: number): number {
  let at = start + 1;
  while (at < to) {
    const code = text.charCodeAt(at);
    if (code === SPACE || code === TAB || code === QUOTE || code === HASH || code === SLASH || code === PERCENT) break;
    if (code === COMMA && !(isDigit(text.charCodeAt(at + 1)) && isFigure(text, start, at))) break;
    at++;
  }
  return at;
}

/** Digits, points and commas only, as in 1,200.00: a comma behind a date or a code ends it. */
function isFigure(text: string, from: number, to: number): boolean {
  for (let at = from; at < to; at++) {
    const code = text.charCodeAt(at);
    if (!isDigit(code) && code !== COMMA && code !== 46) return false;
  }
  return isDigit(text.charCodeAt(to - 1));
}

function kindOfRun(run: string): TokenKind {
  const first = run.charCodeAt(0);
  let allDigits = isDigit(first);
  let dots = 0;
  let hyphens = 0;
  let wordLike = true;
  for (let i = 0; i < run.length; i++) {
    const code = run.charCodeAt(i);
    if ((code > 126 || code < 33) && !isCurrencySign(code)) return 'strange';
    if (isDigit(code)) continue;
    if (code === 46) {
      dots++;
      wordLike = false;
    } else if (code === HYPHEN) hyphens++;
    else {
      allDigits = false;
      if (!isLetter(code)) wordLike = false;
    }
  }
  if (allDigits && hyphens === 0 && (dots === 0 || (dots === 1 && run.charCodeAt(run.length - 1) !== 46))) return 'number';
  if (allDigits && dots === 0 && hyphens > 0 && /^\d{4}-\d\d(-\d\d)?$/.test(run)) return 'date';
  return wordLike && isLetter(first) ? 'word' : 'mixed';
}

export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** The signs of ISO 10646 for cent, pound, yen and the block of currency signs: wrong at a number, but never a look-alike. */
function isCurrencySign(code: number): boolean {
  return (code >= 0xa2 && code <= 0xa5) || (code >= 0x20a0 && code <= 0x20cf);
}

function isLetter(code: number): boolean {
  return (code >= 97 && code <= 122) || (code >= 65 && code <= 90);
}
