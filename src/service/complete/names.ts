import type { NamedKind } from '../../estimate/index.js';
import type { Kind, Record, ValueType } from '../../vocabulary/index.js';
import type { Weighing } from '../types.js';
import { brings } from './known.js';
import type { Offer } from './offer.js';

/** The lines that a slot may name, without those already named and without the line itself. */
export function namesFor(value: ValueType<unknown>, listed: readonly string[], own: { readonly kind: Kind | undefined; readonly name: string | undefined }, { resolved: { scope } }: Weighing): Record[] {
  const kinds = (value.refersTo ?? []) as readonly NamedKind[];
  return kinds.flatMap((kind) => [...scope.namesOf(kind)].flatMap(([name, record]) => {
    if (listed.includes(name) || (kind === own.kind?.word && name === own.name)) return [];
    // A name that two of the kinds have is refused by the checker: it could mean either.
    return kinds.some((other) => other !== kind && scope.find(other, name) !== undefined) ? [] : [record];
  }));
}

export function nameOffers(records: readonly Record[], weighing: Weighing): Offer[] {
  return records.map((record) => {
    const title = record.title?.text;
    return {
      label: record.name?.name ?? '', kind: 'name', says: title === undefined ? record.kind.word : `${record.kind.word}: ${title}`,
      detail: [title, brings(record, weighing)].filter((part) => part !== undefined).join(' — ') || undefined,
      texts: [record.name?.name ?? ''],
    };
  });
}
