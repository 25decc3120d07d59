import { exact, heldByBlocks, limits, releaseTokens, Slot, spanOfStatement, syntaxRules, type Block, type Problem, type Statement, type Token } from '../language/index.js';
import { reportCurrency } from './currency-word.js';
import { Cursor } from './cursor.js';
import type { Kind } from './kind.js';
import { readName, readTitle } from './read-head.js';
import * as rules from './read-rules.js';
import { fieldLedBy, behindList, readLed, readSlots, type Draft } from './read-slots.js';
import type { ReadBlock, Record } from './record.js';
import { closest } from './spelling.js';
import * as valueRules from './value-rules.js';
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

/** A title without its closing quote has swallowed whatever else the line said. */
function endsOpen({ tokens }: Statement): boolean {
  return tokens[tokens.length - 1]?.open === true;
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
      if (!cursor.isSpoiled(rest) && !reportCurrency(cursor)) cursor.report(rules.unknownWord, cursor.span(rest), { written: rest.text, kind: head.text, can: [], meant: undefined, ...behindList(cursor, kind, draft) });
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
    cursor.report(rules.unknownFact, at, { written: head.text, under: under.word, meant: belongsTo === undefined ? closest(head.text, facts) : undefined, belongs: belongsTo, facts });
  }
}
