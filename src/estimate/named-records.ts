import { Slot } from '../language/index.js';
import { heldByRecords, type Record } from '../vocabulary/index.js';

/** The kinds of line whose names other lines may use. */
export const NAMED_KINDS = ['access', 'labour', 'part', 'sublet', 'fee', 'tool', 'finding', 'option', 'rate', 'chance', 'inspect', 'coverage', 'stage'] as const;
export type NamedKind = (typeof NAMED_KINDS)[number];

/** Where each of them stands in that list. */
export const PLACE_OF_KIND: ReadonlyMap<string, number> = new Map(NAMED_KINDS.map((kind, i) => [kind, i]));

/** The name of a record; empty where it has none. */
export function nameIn({ name }: Record): string {
  return name?.name ?? '';
}

const chancesFound = new Slot<readonly Record[]>(heldByRecords);
const NONE: readonly Record[] = [];

/** Whether a name may stand below a record: most have nothing but times or notes there. */
function mayHoldNames({ children }: Record): boolean {
  for (const { kind, children: below } of children) if (below.length > 0 || PLACE_OF_KIND.has(kind.word)) return true;
  return false;
}

/** The chances below a record: they have names, though they stand below the work they belong to. */
function chancesBelow(record: Record): readonly Record[] {
  if (!mayHoldNames(record)) return NONE;
  let found = chancesFound.get(record);
  if (found === undefined) {
    const all = record.children.flatMap((child) => (child.kind.word === 'chance' ? [child, ...chancesBelow(child)] : chancesBelow(child)));
    found = all.length === 0 ? NONE : all;
    chancesFound.set(record, found);
  }
  return found;
}

const given = new Slot<readonly Record[]>(heldByRecords);

/** Every record with a name below a record, in the order in which the first of several is the one that counts. */
export function namedBelow(record: Record): readonly Record[] {
  if (!mayHoldNames(record)) return NONE;
  let found = given.get(record);
  if (found === undefined) {
    const below = record.children.filter(({ kind: { word } }) => word === 'rate' || word === 'tool' || word === 'fee');
    const all = [...chancesBelow(record), ...below].filter(isNamed);
    found = all.length === 0 ? NONE : all;
    given.set(record, found);
  }
  return found;
}

/** Whether a record has a name that other lines may use. */
export function isNamed({ name, kind }: Record): boolean {
  return name !== undefined && PLACE_OF_KIND.has(kind.word);
}

/** A record and what is below it, those that have names. */
export function namedIn(record: Record): readonly Record[] {
  return isNamed(record) ? [record, ...namedBelow(record)] : namedBelow(record);
}
