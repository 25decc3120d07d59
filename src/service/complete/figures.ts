import { type Amount, type Kind, type Record } from '../../vocabulary/index.js';
import type { Weighing } from '../types.js';
import { exampleText } from './example.js';
import { escaped } from './snippet.js';
import { fieldOfKey } from './walk.js';
import type { Here } from './here.js';
import type { Offer } from './offer.js';

/** Figures that a shop says again and again; what a job takes or a part costs is not one of them. */
const HABITS: readonly string[] = ['wait', 'percent'];
const MOST = 8;

/** Waits and percentages as the estimate and its shared files already have them in this slot, the most frequent first. */
export function usedFigures(kind: Kind, key: string, { resolved }: Weighing): Offer[] {
  const { value, says } = fieldOfKey(kind, key);
  if (value.measures === undefined || value.row === true || !value.measures.every((measure) => HABITS.includes(measure))) return [];
  const counts = new Map<string, number>();
  for (const record of withBelow(resolved.records)) {
    const amount = record.kind === kind ? (record.values[key] as Amount | undefined) : undefined;
    if (amount === undefined) continue;
    const text = record.block.text.slice(amount.at.start, amount.at.end).replace(/\s+/g, ' ');
    counts.set(text, (counts.get(text) ?? 0) + 1);
  }
  const used = [...counts].sort(([, a], [, b]) => b - a).slice(0, MOST);
  const all: readonly (readonly [string, number])[] = used.length > 0 ? used : [[exampleText(kind, key) ?? value.examples[0] ?? '', 0]];
  return all.map(([text, times]) => ({ label: text, kind: 'figure', detail: times === 0 ? 'as an example' : times === 1 ? 'said once before' : `said ${times} times before`, says, texts: [escaped(text)] }));
}

/** What another line of the same title says behind it: the shop's coolant is the same coolant here. */
export function sameTitle({ statement }: Here, kind: Kind, { resolved }: Weighing): Offer[] {
  const title = statement?.tokens.find((token) => token.kind === 'text')?.text;
  if (title === undefined) return [];
  return resolved.records.flatMap((record): Offer[] => {
    if (record.kind !== kind || record.statement === statement || record.broken || record.title?.text !== title) return [];
    const text = record.block.text.slice(record.title.at.end, record.at.end).trim().replace(/ {2,}/g, '  ');
    if (text === '') return [];
    return [{ label: text, kind: 'figure', detail: record.name === undefined ? 'as another line of this title' : `as ${record.name.name}`, says: undefined, texts: [escaped(text)] }];
  }).slice(0, 1);
}

function* withBelow(records: readonly Record[]): Generator<Record> {
  for (const record of records) {
    yield record;
    yield* withBelow(record.children);
  }
}
