import { referencesOf } from '../../estimate/index.js';
import { is, kinds, type Field, type Name, type Record } from '../../vocabulary/index.js';

/**
 * What is held against its other version: a line with a name, a title or a place of its own. Lines below it that have
 * none, such as `takes` and `core`, are what it says, and so are its facts.
 */
export interface Thing {
  readonly kind: string;
  readonly record: Record;
  readonly owner: Thing | undefined;
  readonly children: readonly Thing[];
  /** The records that are only what it says: its own first, then those folded into it. */
  readonly said: readonly Record[];
}

/** The words by which a line brings others into an option; each name behind them is a change of its own. */
const LINKS: ReadonlySet<string> = new Set(['do', 'fit', 'send', 'charge', 'uses', 'needs', 'opens']);

/** Below a shop these stand for themselves, though nobody gave them a name. */
const ALONE: ReadonlySet<string> = new Set([kinds.markup.word, kinds.coreTax.word]);

/** Frame, not content: what a file brings in counts as if it stood in it. */
const FRAME: ReadonlySet<string> = new Set([kinds.format.word, kinds.use.word]);

/** A name in a line: which field it stands in, what it may name, and whether the list can do without it. */
export interface Reference {
  readonly record: Record;
  readonly key: string;
  readonly field: Field;
  readonly refersTo: readonly string[];
  readonly name: Name;
}

/** All things of one version, with the ways to find them. */
export interface Things {
  readonly top: readonly Thing[];
  readonly of: (record: Record) => Thing | undefined;
  /** What a name stands for; of several kinds the first that has it, as the estimate reads it. */
  readonly named: (kinds: readonly string[], name: string) => Thing | undefined;
}

export function thingsOf(records: readonly Record[]): Things {
  const byRecord = new Map<Record, Thing>();
  const byName = new Map<string, Thing>();
  const make = (record: Record, owner: Thing | undefined): Thing => {
    const children: Thing[] = [];
    const said: Record[] = [record];
    const thing: Thing = { kind: record.kind.word, record, owner, children, said };
    const fold = (one: Record) => {
      for (const child of one.children) {
        if (one === record && standsForItself(child)) children.push(make(child, thing));
        else {
          said.push(child);
          byRecord.set(child, thing);
          fold(child);
        }
      }
    };
    byRecord.set(record, thing);
    const key = `${thing.kind} ${record.name?.name ?? ''}`;
    if (record.name !== undefined && !byName.has(key)) byName.set(key, thing);
    fold(record);
    return thing;
  };
  const shop = records.find((record) => is(record, kinds.shop));
  const top = records.filter((record) => !FRAME.has(record.kind.word) && (record === shop || !is(record, kinds.shop))).map((record) => make(record, undefined));
  return {
    top,
    of: (record) => byRecord.get(record),
    named: (words, name) => words.map((word) => byName.get(`${word} ${name}`)).find((thing) => thing !== undefined),
  };
}

function standsForItself({ kind, name, title }: Record): boolean {
  return name !== undefined || title !== undefined || ALONE.has(kind.word);
}

export function isLink(field: Field): boolean {
  return field.many && field.lead !== undefined && LINKS.has(field.lead);
}

/** Every name that a record itself mentions. */
export function referencesIn(record: Record): Reference[] {
  return referencesOf(record.kind).flatMap(({ key, refersTo, builtIn }) => {
    const value = record.values[key] as Name | readonly Name[] | undefined;
    const names = value === undefined ? [] : Array.isArray(value) ? (value as readonly Name[]) : [value as Name];
    return names.filter(({ name }) => !Object.hasOwn(builtIn, name)).map((name) => ({ record, key, field: record.kind.fields[key] as Field, refersTo, name }));
  });
}

/** What a thing brings in, each once. */
export function linksOf(thing: Thing, things: Things): { readonly lead: string; readonly target: Thing }[] {
  return thing.said.flatMap(referencesIn).flatMap((reference) => {
    const { field, refersTo, name } = reference;
    const target = isLink(field) ? things.named(refersTo, name.name) : undefined;
    return target === undefined ? [] : [{ lead: field.lead as string, target }];
  });
}

/** The thing and all that stand below it. */
export function withAllBelow(thing: Thing): Thing[] {
  return [thing, ...thing.children.flatMap(withAllBelow)];
}

/** The line that stands at the left edge, of this thing or of one above it. */
export function topOf(thing: Thing): Thing {
  return thing.owner === undefined ? thing : topOf(thing.owner);
}

export function nameOf({ record }: Thing): string | undefined {
  return record.name?.name;
}

/** What people call it: its title, its name, or what the line says. */
export function titleOf({ record }: Thing): string {
  return record.title?.text ?? record.name?.name ?? record.at.block.text.slice(record.at.start, record.at.end).replace(/\s+/g, ' ');
}
