import type { Span, Token } from '../language/index.js';
import { currencyOf } from './currency.js';
import type { Cursor } from './cursor.js';
import { currencyWord } from './value-rules.js';

/**
 * Reports a currency that comes next in small letters, `64.30 usd`, or before its figure, `USD 64.30`; false where
 * neither is so. Only asked of words that mean nothing else at their place.
 */
export function reportCurrency(cursor: Cursor): boolean {
  const word = cursor.peek();
  const code = word?.kind === 'word' ? word.text.toUpperCase() : '';
  if (word === undefined || currencyOf(code) === undefined) return false;
  const behind = figuresFrom(cursor, 1);
  const before = behind === undefined ? figureBefore(cursor) : undefined;
  if (behind !== undefined) tell(cursor, { ...behind, start: word.start }, `${textOf(behind)} ${code}`);
  else if (before !== undefined) tell(cursor, { ...before, end: word.end }, `${textOf(before)} ${code}`);
  return behind !== undefined || before !== undefined;
}

function tell(cursor: Cursor, at: Span, proper: string): void {
  cursor.report(currencyWord, at, { written: textOf(at), proper });
}

/** One figure, or three of a range, so many tokens ahead. */
function figuresFrom(cursor: Cursor, ahead: number): Span | undefined {
  const first = cursor.peek(ahead);
  if (first?.kind !== 'number') return undefined;
  let last: Token = first;
  for (let i = ahead + 1; cursor.peek(i)?.text === '/' && cursor.peek(i + 1)?.kind === 'number'; i += 2) last = cursor.peek(i + 1) as Token;
  return cursor.span(first, last);
}

/** The figures just read, all points of a range. */
function figureBefore(cursor: Cursor): Span | undefined {
  const last = cursor.peek(-1);
  if (last?.kind !== 'number') return undefined;
  let first: Token = last;
  for (let i = -2; cursor.peek(i)?.text === '/' && cursor.peek(i - 1)?.kind === 'number'; i -= 2) first = cursor.peek(i - 1) as Token;
  return cursor.span(first, last);
}

function textOf({ block, start, end }: Span): string {
  return block.text.slice(start, end);
}
