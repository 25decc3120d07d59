import { allKinds, type Field, type Kind } from '../vocabulary/index.js';

/** A slot that names other records: of which kinds, and which names need no line. */
export interface Reference {
  readonly key: string;
  readonly refersTo: readonly string[];
  readonly builtIn: Readonly<{ [name: string]: string }>;
}

const referencesByKey = new Map<Kind, ReadonlyMap<string, Reference>>();

/** The slots of a kind that name other records, by their keys. */
export function referencesIn(kind: Kind): ReadonlyMap<string, Reference> {
  let found = referencesByKey.get(kind);
  if (found === undefined) {
    found = new Map(Object.entries(kind.fields).flatMap(([key, field]) => {
      const { refersTo, builtIn } = (field as Field).value;
      return refersTo === undefined ? [] : [[key, { key, refersTo, builtIn: builtIn ?? {} }]];
    }));
    referencesByKey.set(kind, found);
  }
  return found;
}

/** The same as a list, in the order of the kind. */
export function referencesOf(kind: Kind): readonly Reference[] {
  return [...referencesIn(kind).values()];
}

/** Behind which word of a line, or at the head of which line beside it, a name of this kind may stand; undefined where there is none. */
export function wordFor(named: string, on: Kind): string | undefined {
  const own = referencesOf(on).find(({ refersTo }) => refersTo.includes(named));
  if (own !== undefined) return (on.fields[own.key] as Field).lead;
  const parent = allKinds.find(({ children }) => children.includes(on));
  return parent?.children.find((beside) => referencesOf(beside).some(({ key, refersTo }) => refersTo.includes(named) && (beside.fields[key] as Field).lead === undefined))?.word;
}
