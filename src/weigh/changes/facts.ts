import { kinds, type Field, type Name, type Record } from '../../vocabulary/index.js';
import { isLink, referencesIn, type Reference, type Thing } from './things.js';

/** One thing that a line says: its word, its text as written, and a form that is equal where the meaning is. */
export interface Fact {
  readonly label: string;
  readonly written: string;
  readonly meaning: string;
}

/** What a name stands for, in a form that is the same in both versions; undefined where a list can leave it out. */
export type Meant = (reference: Reference) => string | undefined;

/** By its name alone, before it is known what became of whom. */
export const byName: Meant = ({ name }) => name.name;

/** What a thing says of itself, by a key that is the same in both versions; without name, title and what it brings in. */
export function factsOf(thing: Thing, meant: Meant): ReadonlyMap<string, Fact> {
  const facts = new Map<string, Fact>();
  const add = (key: string, fact: Fact) => {
    let free = key;
    for (let i = 2; facts.has(free); i++) free = `${key} ${i}`;
    facts.set(free, fact);
  };
  for (const record of thing.said) {
    const references = referencesIn(record);
    const own = record === thing.record;
    // Hours on the head of a job are one more of its times.
    const isTime = record.kind.word === kinds.takes.word || (own && record.kind.word === kinds.labour.word);
    const time = isTime ? timeOf(record, references, meant) : undefined;
    if (time !== undefined) add(time.key, time.fact);
    const before = own ? '' : `${record.kind.word} `;
    const which = own ? '' : ` ${record.title?.text ?? record.name?.name ?? ''}${references.filter(({ field }) => !field.many).map((one) => meant(one) ?? '').join('+')}`;
    for (const [key, value] of Object.entries(record.values)) {
      const field = record.kind.fields[key] as Field;
      if (isLink(field) || (time !== undefined && (key === 'hours' || key === 'with'))) continue;
      const label = `${before}${field.lead ?? words(key)}`;
      const names = references.filter((one) => one.key === key);
      const meaning = names.length > 0 && field.many ? named(names, meant) : names.length > 0 ? names.map((one) => meant(one) ?? '').sort().join(', ') : asData(field, value);
      if (meaning === undefined) continue;
      add(`${label}${which}`, { label, written: writtenOf(value), meaning });
    }
  }
  return facts;
}

function timeOf(record: Record, references: readonly Reference[], meant: Meant): { readonly key: string; readonly fact: Fact } | undefined {
  const { hours } = record.values as { readonly hours?: { readonly at: Record['at'] } };
  if (hours === undefined) return undefined;
  const ways = references.filter(({ key }) => key === 'with');
  const said = ways.map(({ name }) => name.name).join(' and ');
  return {
    key: `hours ${ways.map((one) => meant(one) ?? one.name.name).sort().join('+')}`,
    fact: { label: said === '' ? 'hours' : `hours with ${said}`, written: textAt(hours.at), meaning: asData(record.kind.fields['hours'] as Field, hours) },
  };
}

/** Names in any order; those that belong to another change are left out, and a list of nothing else says nothing. */
function named(names: readonly Reference[], meant: Meant): string | undefined {
  const kept = names.flatMap((one) => meant(one) ?? []);
  return kept.length === 0 ? undefined : [...new Set(kept)].sort().join(', ');
}

/** Lists say the same in any order. */
function asData(field: Field, value: unknown): string {
  const data = field.value.toJson(value);
  return Array.isArray(data) && field.many ? JSON.stringify(data.map((one) => JSON.stringify(one)).sort()) : JSON.stringify(data);
}

type Placed = { readonly at: Record['at'] };

/** The text of a value as it stands in its line. */
function writtenOf(value: unknown): string {
  const list = (Array.isArray(value) ? value : [value]) as readonly (Placed | Name)[];
  return list.map(({ at }) => textAt(at)).join(', ');
}

function textAt({ block, start, end }: Record['at']): string {
  return block.text.slice(start, end).replace(/\s+/g, ' ');
}

/** upTo as people write it: up to. */
function words(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
