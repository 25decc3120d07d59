import type { Range, Statement, Tree } from '../../language/index.js';
import { kindAbove, kindOf, locate, type At } from '../at.js';
import { slotsOf } from '../format/cells.js';
import { endOf } from './lines.js';

/** Word, slot, line, line with what stands below it, the lines above in turn, block, file: each wider than the last. */
export function selectionAt(tree: Tree, offset: number): readonly Range[] {
  const whole = { start: 0, end: tree.text.length };
  const at = locate(tree, offset);
  if (at === undefined) return [whole];
  const local = [...wordRanges(at, offset - at.start), ...lineRanges(at), blockRange(at)];
  const ranges = [...local.map((range) => ({ start: at.start + range.start, end: at.start + range.end })), whole];
  const kept: Range[] = [];
  for (const range of ranges) {
    if (range.start > offset || range.end < offset) continue;
    const last = kept[kept.length - 1];
    const grows = last === undefined || (range.start <= last.start && range.end >= last.end && (range.start < last.start || range.end > last.end));
    if (grows) kept.push(range);
  }
  return kept;
}

/** The word, and the slot that it is part of: `cost 88.00`, `with engine-lifted`. */
function wordRanges({ statement, above, token, block }: At, local: number): Range[] {
  const comment = block.comments.find(({ start, end }) => start <= local && local <= end);
  if (comment !== undefined && (token === undefined || token.end < local)) return [comment];
  if (statement === undefined) return [];
  const { tokens } = statement;
  const slots = slotsOf(statement, kindOf(statement, above), kindAbove(above)).flatMap(({ from, to }) => {
    const start = tokens[from]?.start;
    const end = tokens[to - 1]?.end;
    return start === undefined || end === undefined ? [] : [{ start, end }];
  });
  const word = token === undefined ? [] : [...(token.kind === 'text' && token.open !== true ? [{ start: token.start + 1, end: token.end - 1 }] : []), { start: token.start, end: token.end }];
  return [...word, ...slots.filter(({ start, end }) => start <= local && local <= end)];
}

function lineRanges({ statement, above }: At): Range[] {
  const own = statement === undefined ? [] : [wordsOf(statement), lineOf(statement), withBelow(statement)];
  return [...own, ...[...above].reverse().map(withBelow)];
}

function wordsOf({ tokens }: Statement): Range {
  return { start: tokens[0]?.start ?? 0, end: tokens[tokens.length - 1]?.end ?? 0 };
}

function lineOf(statement: Statement): Range {
  const words = wordsOf(statement);
  return { start: words.start, end: statement.comment?.end ?? words.end };
}

function withBelow(statement: Statement): Range {
  return { start: statement.tokens[0]?.start ?? 0, end: endOf(statement) };
}

/** All that belongs to the block, comments below it too, without the blank lines behind it. */
function blockRange({ block }: At): Range {
  return { start: 0, end: block.text.trimEnd().length };
}
