import { exact, heldByBlocks, limits, releaseTokens, Slot, spanOfStatement, syntaxRules, type Block, type Problem, type Statement, type Token } from '../language/index.js';
import { accepts, dimensionOf, fits, readAmount } from './amounts.js';
import { Cursor } from './cursor.js';
import type { Field, Kind } from './kind.js';
import { looksNumeric } from './numbers.js';
import * as rules from './read-rules.js';
import type { ReadBlock, Record } from './record.js';
import { closest } from './spelling.js';
import * as valueRules from './value-rules.js';
import type { Name, Text } from './value.js';
import { fileKinds, kindsThatKnow } from './vocabulary.js';

const { mixedIndent } = syntaxRules;
const NOTHING_BELOW: readonly Record[] = [];
const cache = new Slot<ReadBlock>(heldByBlocks);
const topKinds: ReadonlyMap<string, Kind> = new Map(fileKinds.map((kind) => [kind.word, kind]));
const topWords: readonly string[] = [...topKinds.keys()];

/** Reads what a block says. Kept by the block's identity, so an unchanged block is read once. */
export function readBlock(block: Block): ReadBlock {
  let found = cache.get(block);
  if (found === undefined) {
    const problems: Problem[] = [...block.problems];
    const into: Found = { problems, unread: [], records: [], cursor: new Cursor(block, problems) };
    for (const statement of block.statements) {
      const record = readStatement(statement, undefined, into);
      if (record !== undefined) into.records.push(record);
    }
    found = { records: exact(into.records), problems: exact(problems), unread: exact(into.unread) };
    cache.set(block, found);
    releaseTokens(block);
  }
  return found;
}

interface Found {
  readonly problems: Problem[];
  readonly unread: Statement[];
  /** Records that were read and wait for the one that they stand below. */
  readonly records: Record[];
  /** The one cursor of a block: a line is read through before those below it. */
  readonly cursor: Cursor;
}

interface Draft {
  readonly values: { [key: string]: unknown };
  broken: boolean;
}

function readStatement(statement: Statement, under: Kind | undefined, found: Found): Record | undefined {
  const head = statement.tokens[0] as Token;
  const kinds = under === undefined ? topKinds : under.childByWord;
  const kind = head.kind === 'text' ? undefined : kinds.get(head.text);
  const { cursor } = found;
  cursor.enter(statement, 1);
  if (kind === undefined) {
    if (!cursor.isSpoiled(head) && !isMisplaced(statement)) reportUnknown(cursor, head, under);
    found.unread.push(statement);
    return undefined;
  }
  const draft: Draft = { values: {}, broken: false };
  const name = readName(cursor, kind, draft, head);
  const title = readTitle(cursor, kind, draft, head);
  readSlots(cursor, kind, draft);
  if (endsOpen(statement)) draft.broken = true;
  const children = readBelow(statement, kind, draft, found);
  return { kind, statement, block: statement.block, name, title, values: draft.values as Record['values'], children, broken: draft.broken, at: spanOfStatement(statement), held: undefined };
}

function readName(cursor: Cursor, kind: Kind, draft: Draft, head: Token): Name | undefined {
  if (kind.name === 'none') return undefined;
  const token = cursor.peek();
  const second = cursor.peek(1);
  const isName = token?.kind === 'word' && (kind.name === 'required' || second?.kind === 'text' || fieldLedBy(cursor, kind) === undefined && !isBareWord(kind, token));
  if (token !== undefined && isName) {
    cursor.take();
    if (token.text.endsWith('-')) cursor.report(rules.badName, cursor.span(token), { written: token.text, plain: token.text.replace(/(?<!-)-+$/, '') });
    return { name: token.text, at: cursor.span(token) };
  }
  if (token?.kind === 'mixed' && second?.kind === 'text') {
    cursor.take();
    const plain = /^\d/.test(token.text) ? '' : token.text.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^[-0-9]+|(?<!-)-+$/g, '');
    cursor.report(rules.badName, cursor.span(token), { written: token.text, plain: plain === '' ? undefined : plain });
    draft.broken = true;
    return undefined;
  }
  if (kind.name === 'required' && !(token !== undefined && cursor.isSpoiled(token))) {
    cursor.report(rules.nameMissing, cursor.span(head), { kind: kind.word });
    draft.broken = true;
  }
  return undefined;
}

/** A title without its closing quote has swallowed whatever else the line said. */
function endsOpen({ tokens }: Statement): boolean {
  return tokens[tokens.length - 1]?.open === true;
}

function isBareWord(kind: Kind, token: Token): boolean {
  return kind.bares.words.some((key) => (kind.fields[key] as Field).value.starts(token) && (kind.fields[key] as Field).value.words !== undefined);
}

function readTitle(cursor: Cursor, kind: Kind, draft: Draft, head: Token): Text | undefined {
  if (kind.title === 'none') return undefined;
  const token = cursor.peek();
  if (token?.kind === 'text') {
    cursor.take();
    return { text: token.text, at: cursor.span(token) };
  }
  if (!draft.broken && token !== undefined && token.kind !== 'mark' && cursor.peek(1)?.kind === 'text' && fieldLedBy(cursor, kind) === undefined) {
    cursor.report(rules.unknownWord, cursor.span(token), { written: token.text, kind: kind.word, can: ['the title in quotes'], meant: undefined });
    draft.broken = true;
    return undefined;
  }
  if (kind.title === 'required' && !draft.broken && !(token !== undefined && cursor.isSpoiled(token))) {
    cursor.report(rules.titleMissing, cursor.span(head), { kind: kind.word, says: kind.titleSays });
    draft.broken = true;
  }
  return undefined;
}

/** Reads the rest of a head line; the first thing that can't be read ends it, with one message. */
function readSlots(cursor: Cursor, kind: Kind, draft: Draft): void {
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
  const can = wordsOf(kind, draft);
  cursor.report(rules.unknownWord, cursor.span(token), { written: token.text, kind: kind.word, can, meant: token.kind === 'word' ? closest(token.text, can) : undefined });
}

function readLed(cursor: Cursor, kind: Kind, key: string, draft: Draft): void {
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
    cursor.report(rules.extraFigure, amount.at, { kind: kind.word });
    return;
  }
  const fields = candidates.map((key) => (kind.fields[key] as Field).value);
  fits(cursor, amount, { label: wanted.label, says: '', examples: fields[0]?.examples ?? [], measures: fields.flatMap((field) => field.measures ?? []) });
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
function fieldLedBy(cursor: Cursor, kind: Kind): string | undefined {
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

/** Reads the indented lines: a fact of this record, or a record of its own. */
function readBelow(statement: Statement, kind: Kind, draft: Draft, found: Found): readonly Record[] {
  if (statement.children.length === 0) return NOTHING_BELOW;
  const { cursor, records } = found;
  const before = records.length;
  for (const line of statement.children) {
    if (found.problems.length > limits.problems) {
      draft.broken = true;
      break;
    }
    const head = line.tokens[0] as Token;
    cursor.enter(line, 0);
    const key = fieldLedBy(cursor, kind);
    if (key === undefined || kind.childByWord.has(head.text)) {
      const child = readStatement(line, kind, found);
      if (child === undefined) draft.broken = true;
      else records.push(child);
      continue;
    }
    const own: Draft = { values: draft.values, broken: false };
    readLed(cursor, kind, key, own);
    const rest = cursor.peek();
    if (!own.broken && rest !== undefined) {
      own.broken = true;
      if (!cursor.isSpoiled(rest)) cursor.report(rules.unknownWord, cursor.span(rest), { written: rest.text, kind: head.text, can: rest.kind === 'word' && (kind.fields[key] as Field).many ? ['a comma and the next one'] : [], meant: undefined });
    }
    if (own.broken || endsOpen(line)) draft.broken = true;
    const below = line.children[0];
    if (below !== undefined && !isMisplaced(below)) cursor.report(rules.nothingBelow, spanOfFirst(below), { word: head.text });
  }
  return records.length === before ? NOTHING_BELOW : records.splice(before);
}

/** A line whose indentation can't be told has its message already, and may well belong elsewhere. */
function isMisplaced({ block, tokens }: Statement): boolean {
  return block.problems.some(({ code, at }) => code === mixedIndent.code && at.end === tokens[0]?.start);
}

function spanOfFirst(statement: Statement) {
  const first = statement.tokens[0] as Token;
  return { block: statement.block, start: first.start, end: first.end };
}

function reportUnknown(cursor: Cursor, head: Token, under: Kind | undefined): void {
  const at = cursor.span(head);
  if (head.kind === 'mark') {
    cursor.report(valueRules.expected, at, { wanted: 'the first word of a line', example: 'part pump "Coolant pump" 64.30 new', found: head.text });
    return;
  }
  // What stands below such a line already lacks the second of two words.
  const belongs = kindsThatKnow(head.text).filter((word) => word !== under?.word).join(' or ');
  const belongsTo = belongs === '' ? undefined : belongs;
  if (under === undefined) {
    cursor.report(rules.unknownKind, at, { written: head.text, meant: belongsTo === undefined ? closest(head.text, topWords) : undefined, belongs: belongsTo, kinds: topWords });
  } else {
    const facts = [...new Set([...under.leads.keys(), ...under.childByWord.keys()])];
    cursor.report(rules.unknownFact, at, { written: head.text, under: under.word, meant: closest(head.text, facts), belongs: belongsTo, facts });
  }
}
