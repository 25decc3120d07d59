import type { NamedKind } from '../../estimate/index.js';
import type { Kind, Record, ValueType } from '../../vocabulary/index.js';
import type { Weighing } from '../types.js';
import { brings } from './known.js';
import type { Offer } from './offer.js';

/** A line that names others: it does not name itself. */
export interface Naming {
  readonly kind: Kind | undefined;
  readonly name: string | undefined;
}

/** The lines that a slot may name, without those already named and without the line itself. */
export function* namesFor(value: ValueType<unknown>, listed: readonly string[], own: Naming, { resolved: { scope } }: Weighing): Generator<Record> {
  const kinds = (value.refersTo ?? []) as readonly NamedKind[];
  for (const kind of kinds) {
    for (const [name, record] of scope.namesOf(kind)) {
      if (listed.includes(name) || (kind === own.kind?.word && name === own.name)) continue;
      // A name that two of the kinds have is refused by the checker: it could mean either.
      if (kinds.length === 1 || !kinds.some((other) => other !== kind && scope.find(other, name) !== undefined)) yield record;
    }
  }
}

/** A name that the slot may take, to stand there until it is typed over; there may be a thousand others. */
export function firstName(value: ValueType<unknown>, own: Naming, weighing: Weighing): string | undefined {
  for (const record of namesFor(value, [], own, weighing)) return record.name?.name;
  return undefined;
}

export function nameOffers(records: Iterable<Record>, weighing: Weighing): Offer[] {
  return Array.from(records, (record): Offer => {
    const title = record.title?.text;
    return {
      label: record.name?.name ?? '', kind: 'name', says: title === undefined ? record.kind.word : `${record.kind.word}: ${title}`,
      detail: [title, brings(record, weighing)].filter((part) => part !== undefined).join(' — ') || undefined,
      texts: [record.name?.name ?? ''],
    };
  });
}
