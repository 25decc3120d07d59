import { topicsOf } from '../../estimate/index.js';
import type { Fix, Statement } from '../../language/index.js';
import { NOTHING, type Choice, type Name, type Record, type Topic } from '../../vocabulary/index.js';
import { endOfLines, factBelow, lineAround } from '../checks/lines.js';
import type { FeatureContext } from '../context.js';
import type { Action, TextEdit } from '../feature-types.js';

/** A change of one place in a block; the facade turns it into an edit of a file. */
export type Change = Omit<Fix, 'title'>;

/** An action of some changes, or undefined where one of them has no place any more. */
export function actionOf(title: string, code: string, changes: readonly Change[], context: FeatureContext): Action | undefined {
  const edits = new Map<string, TextEdit[]>();
  for (const { at, text } of changes) {
    const place = context.place(at);
    if (place === undefined) return undefined;
    const list = edits.get(place.uri) ?? [];
    list.push({ range: place.range, text });
    edits.set(place.uri, list);
  }
  for (const list of edits.values()) list.sort((a, b) => a.range.start - b.range.start);
  return { title, kind: 'fix', code, edits, creates: undefined };
}

/** A name behind a word of a line: at the end of the list that stands there, or on a line of its own. */
export function nameBehind(record: Record, key: string, name: string): Change {
  const lead = record.kind.fields[key]?.lead ?? key;
  const names = record.values[key] as readonly Name[] | undefined;
  const last = names?.[names.length - 1];
  if (last === undefined) return factBelow(record.at, lead, name);
  return { at: { block: record.block, start: last.at.end, end: last.at.end }, text: `, ${name}` };
}

/** What a line counts as, with one thing more. What it was taken for so far is written down with it. */
export function countsAs(record: Record, topics: readonly Topic[]): Change {
  const said = record.values['countsAs'] as readonly Choice[] | undefined;
  const last = said?.[said.length - 1];
  if (last === undefined) return factBelow(record.at, 'counts as', [...new Set([...topicsOf({ record }), ...topics])].join(', '));
  const only = last.word === NOTHING;
  return { at: { block: record.block, start: only ? last.at.start : last.at.end, end: last.at.end }, text: only ? topics.join(', ') : `, ${topics.join(', ')}` };
}

/** A line of its own behind all that stands below a record. */
export function lineAtEnd(record: Record, line: string): Change {
  const { text } = record.block;
  const [first] = record.statement.children;
  const own = lineAround(text, record.at.start);
  const indent = first === undefined ? `${/^[ \t]*/.exec(text.slice(own.start, own.end))?.[0] ?? ''}  ` : text.slice(lineAround(text, first.tokens[0]?.start ?? 0).start, first.tokens[0]?.start);
  return { ...behindAll(record), text: `${endOfLines(text)}${indent}${line}` };
}

/** A line at the left edge behind a record, in the columns of that record where it is of the same kind. */
export function lineBehind(record: Record, kind: string, name: string, title: string, rest: string): Change {
  const { text } = record.block;
  const from = lineAround(text, record.at.start).start;
  const alike = record.kind.word === kind && record.title !== undefined ? record.title.at : undefined;
  const next = alike === undefined ? undefined : record.statement.tokens.find((token) => token.start >= alike.end);
  const head = `${kind} ${name} `.padEnd(alike === undefined ? 0 : alike.start - from);
  const line = `${head}"${title}" `.padEnd(next === undefined ? 0 : next.start - from) + rest;
  return { ...behindAll(record), text: `${endOfLines(text)}${line.trimEnd()}` };
}

function behindAll(record: Record): Change {
  const { block } = record;
  const { end } = lineAround(block.text, lastOffset(record.statement));
  return { at: { block, start: end, end }, text: '' };
}

function lastOffset({ tokens, children }: Statement): number {
  const last = children[children.length - 1];
  return last === undefined ? (tokens[tokens.length - 1]?.end ?? 0) : lastOffset(last);
}
