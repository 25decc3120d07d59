import type { Token } from '../language/index.js';
import { accepts, dimensionOf, fits, readAmount } from './amounts.js';
import { reportCurrency } from './currency-word.js';
import type { Cursor } from './cursor.js';
import type { Field, Kind } from './kind.js';
import { looksNumeric } from './numbers.js';
import * as rules from './read-rules.js';
import { begun, closest } from './spelling.js';
import * as valueRules from './value-rules.js';
import type { Amount, Text, ValueType } from './value.js';

/** What was read of a line so far. */
export interface Draft {
  readonly values: { [key: string]: unknown };
  broken: boolean;
}

/** Reads the rest of a head line; the first thing that can't be read ends it, with one message. */
export function readSlots(cursor: Cursor, kind: Kind, draft: Draft): void {
  while (cursor.peek() !== undefined && !draft.broken) readSlot(cursor, kind, draft);
}

function readSlot(cursor: Cursor, kind: Kind, draft: Draft): void {
  const token = cursor.peek() as Token;
  if (cursor.isSpoiled(token)) {
    draft.broken = true;
    return;
  }
  const key = fieldLedBy(cursor, kind);
  if (key !== undefined) return readLed(cursor, kind, key, draft);
  if (looksNumeric(token) && kind.bares.figures.length > 0) return readBareAmount(cursor, kind, draft);
  for (const bareKey of kind.bares.words) {
    const field = kind.fields[bareKey] as Field;
    if (draft.values[bareKey] === undefined && field.value.starts(token)) {
      return store(draft, bareKey, field, field.value.read(cursor));
    }
  }
  draft.broken = true;
  if (reportCurrency(cursor)) return;
  const isTimes = kind.bares.count !== undefined && /^[xX]$/.test(token.text) && cursor.peek(-1)?.kind === 'number';
  const can = wordsOf(kind, draft);
  if (isTimes) return void cursor.report(rules.unknownWord, cursor.span(token), { written: token.text, kind: kind.word, can, meant: 'at' });
  cursor.report(rules.unknownWord, cursor.span(token), { written: token.text, kind: kind.word, can, meant: token.kind === 'word' ? closest(token.text, can) : undefined, ...behindList(cursor, kind, draft) });
}

/** Reads a slot by its lead word, which comes next. */
export function readLed(cursor: Cursor, kind: Kind, key: string, draft: Draft): void {
  const field = kind.fields[key] as Field;
  const first = cursor.take() as Token;
  const last = field.lead === first.text ? first : (cursor.take() as Token);
  if (draft.values[key] !== undefined && !field.many) {
    draft.broken = true;
    cursor.report(rules.saidTwice, cursor.span(first, last), { word: field.lead as string });
    return;
  }
  store(draft, key, field, field.value.read(cursor));
}

function store(draft: Draft, key: string, field: Field, value: unknown): void {
  if (value === undefined) draft.broken = true;
  // Into the list of the first line, which nobody else has: a new one for each line would be as slow as lines are many.
  else if (field.many && draft.values[key] !== undefined) for (const one of value as readonly unknown[]) (draft.values[key] as unknown[]).push(one);
  else draft.values[key] = value;
}

/** A figure with no word in front: a quantity where `at` follows, or else the first free slot that takes its unit. */
function readBareAmount(cursor: Cursor, kind: Kind, draft: Draft): void {
  const { count, figures } = kind.bares;
  const [first = ''] = figures;
  const wanted = (kind.fields[figures.find((key) => draft.values[key] === undefined) ?? first] as Field).value;
  const amount = readAmount(cursor, wanted);
  if (amount === undefined) {
    draft.broken = true;
    return;
  }
  const next = cursor.peek();
  const isCount = count !== undefined && next?.kind === 'word' && next.text === 'at';
  if (isCount && !takeAt(cursor, kind)) {
    draft.broken = true;
    return;
  }
  if (count !== undefined && !isCount && lacksAt(cursor, kind, count, figures, amount)) {
    draft.broken = true;
    return;
  }
  const candidates = isCount ? [count] : figures;
  const dimension = dimensionOf(amount);
  let fitting = 0;
  for (const key of candidates) {
    if (!accepts((kind.fields[key] as Field).value.measures ?? [], dimension)) continue;
    fitting++;
    if (draft.values[key] !== undefined) continue;
    draft.values[key] = amount;
    return;
  }
  draft.broken = true;
  if (fitting > 0) {
    cursor.report(rules.extraFigure, amount.at, { kind: kind.word, ...dividedBySpace(cursor, amount, count) });
    return;
  }
  const fields = candidates.map((key) => (kind.fields[key] as Field).value);
  fits(cursor, amount, { label: wanted.label, says: '', examples: fields[0]?.examples ?? [], measures: fields.flatMap((field) => field.measures ?? []) });
}

/** Reports `6 d 18.00`, a quantity and a price without the word between them; false where it is something else. */
function lacksAt(cursor: Cursor, kind: Kind, count: string, figures: readonly string[], amount: Amount): boolean {
  const next = cursor.peek();
  if (next === undefined || !looksNumeric(next) || amount.unit === undefined || takes(kind, figures, amount) || !takes(kind, [count], amount)) return false;
  const { text } = cursor.block;
  cursor.report(valueRules.expected, cursor.span(next), { wanted: 'at, between how many and the price of one', example: `${text.slice(amount.at.start, amount.at.end)} at ${text.slice(next.start, next.end)}`, found: undefined });
  return true;
}

function takes(kind: Kind, keys: readonly string[], amount: Amount): boolean {
  return keys.some((key) => accepts((kind.fields[key] as Field).value.measures ?? [], dimensionOf(amount)));
}

/** The figures `1 250.00`, which may be one number or a quantity and a price; the first of them undefined where they are neither. */
function dividedBySpace(cursor: Cursor, { at }: Pick<Amount, 'at'>, count: string | undefined) {
  const [before, own] = [cursor.peek(-2), cursor.peek(-1)];
  const isOne = count !== undefined && own?.start === at.start && before?.kind === 'number' && before.end + 1 === at.start && /^[1-9]\d{0,2}$/.test(before.text) && /^\d{3}(\.\d+)?$/.test(own.text);
  return { before: isOne ? before.text : undefined, written: own?.text ?? '' };
}

/** Where the list that was just read goes on without a comma, or with “and” or “or” in its place: how that is written. */
export function behindList(cursor: Cursor, kind: Kind, { values }: Draft): rules.BehindList {
  const [before, token] = [cursor.peek(-1), cursor.peek()];
  const next = token?.kind === 'word' && /^(and|or)$/.test(token.text) ? cursor.peek(1) : token;
  if (before === undefined || next === undefined) return {};
  for (const key in values) {
    const { item } = (kind.fields[key] as Field).value;
    if (item === undefined || item.measures !== undefined) continue;
    if ((values[key] as readonly Text[]).at(-1)?.at.end !== before.end) continue;
    const { text } = cursor.block;
    const more = item.starts(next) || (next.kind === 'word' && item.words !== undefined) ? meantIn(item, next, text) : undefined;
    return more === undefined ? { alone: item.alone } : { joined: { start: before.start, end: next.end, text: `${text.slice(before.start, before.end)}, ${more}` } };
  }
  return {};
}

/** How a word is written that may go on a list; undefined where it is none of those that can stand there. */
function meantIn({ words }: ValueType<unknown>, { kind, text, start, end }: Token, line: string): string | undefined {
  if (kind !== 'word' || words === undefined || Object.hasOwn(words, text)) return line.slice(start, end);
  const all = Object.keys(words);
  return closest(text, all) ?? begun(text, all);
}

/** The `at` of `12 at 5.85`, which something must follow. */
function takeAt(cursor: Cursor, kind: Kind): boolean {
  cursor.take();
  const next = cursor.peek();
  if (next !== undefined && (looksNumeric(next) || fieldLedBy(cursor, kind) !== undefined)) return true;
  cursor.report(valueRules.expected, cursor.hereSpan(), { wanted: 'the figure for one', example: '12 at 5.85', found: next?.text });
  return false;
}

/** The field whose lead word, or two, come next. */
export function fieldLedBy(cursor: Cursor, kind: Kind): string | undefined {
  const token = cursor.peek();
  if (token?.kind !== 'word') return undefined;
  if (kind.firstOfTwo.has(token.text)) {
    const second = cursor.peek(1);
    const both = second?.kind === 'word' ? kind.leads.get(`${token.text} ${second.text}`) : undefined;
    if (both !== undefined) return both;
  }
  return kind.leads.get(token.text);
}

/** What may still be said: of words without a lead none that has its place taken. */
function wordsOf(kind: Kind, { values }: Draft): string[] {
  const choices = kind.bares.words.filter((key) => values[key] === undefined).flatMap((key) => Object.keys((kind.fields[key] as Field).value.words ?? {}));
  return [...choices, ...kind.leads.keys()];
}
