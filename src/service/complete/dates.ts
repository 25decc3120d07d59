import { dayOf, isoOf } from '../../estimate/index.js';
import { kinds, type DateValue, type Field, type Kind, type Record } from '../../vocabulary/index.js';
import type { Weighing } from '../types.js';
import type { Here } from './here.js';
import type { Offer } from './offer.js';

/** Kinds whose days are days of this job. The last day of a coverage is none: it says nothing about when work is done. */
const OF_THE_JOB: readonly Kind[] = [kinds.estimate, kinds.quoted, kinds.authorised, kinds.started, kinds.closed];
const MOST = 6;
const WEEK = 7;

/** Whether a slot takes a day on which something of this job happens. */
export function isDayOfJob(kind: Kind, { value }: Field): boolean {
  return value.day === true && OF_THE_JOB.includes(kind);
}

/** Today, and the other days that the job's lines say, in the order of the file. */
export function dayOffers({ today, statement, above }: Here, kind: Kind, key: string, { resolved }: Weighing): Offer[] {
  const field = kind.fields[key] as Field;
  if (!isDayOfJob(kind, field)) return [];
  const { says } = field;
  const offers: Offer[] = today === undefined ? [] : [{ label: 'today', kind: 'day', detail: today, says, texts: [today] }];
  const seen = new Set(today === undefined ? [] : [today]);
  const own = [statement, above[above.length - 1]];
  for (const { record, slot, iso } of daysIn(resolved.records)) {
    if (offers.length === MOST) break;
    if (seen.has(iso) || (slot === key && own.includes(record.statement))) continue;
    seen.add(iso);
    offers.push({ label: iso, kind: 'day', detail: `${record.kind.word} ${record.kind.fields[slot]?.lead ?? ''}`.trim(), says, texts: [iso] });
  }
  return offers;
}

function* daysIn(records: readonly Record[]): Generator<{ readonly record: Record; readonly slot: string; readonly iso: string }> {
  for (const record of records) {
    if (!OF_THE_JOB.includes(record.kind)) continue;
    for (const [slot, { value }] of Object.entries(record.kind.fields)) {
      const said = value.day === true ? (record.values[slot] as DateValue | undefined) : undefined;
      if (said !== undefined) yield { record, slot, iso: said.iso };
    }
  }
}

/**
 * The days of an example as if its first were today: that becomes today, and the others come as long behind it or up to
 * six days longer, so that each falls on the day of the week that it had. A shop that is open then is open now.
 */
export function daysFrom(today: string, examples: readonly string[]): ReadonlyMap<string, string> {
  const first = [...examples].sort()[0];
  if (first === undefined) return new Map();
  return new Map(examples.map((iso) => {
    const moved = dayOf(today) + dayOf(iso) - dayOf(first);
    const turned = (((dayOf(iso) - moved) % WEEK) + WEEK) % WEEK;
    return [iso, iso === first ? today : isoOf(moved + turned)];
  }));
}
