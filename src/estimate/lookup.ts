import type { Problem } from '../language/index.js';
import type { Name } from '../vocabulary/index.js';
import type { Scope } from './scope.js';
import type { Fee, Shop, Tool } from './shop-types.js';
import type { Access, Finding, Labour, Part, Sublet } from './work-types.js';

/** What the builders of single lines look names up in. Each entity is built once, whoever asks first. */
export interface Lookup {
  readonly shop: Shop;
  readonly scope: Scope;
  /** Stands for everything that a job is looked up in but other jobs: the same object as long as all of that is the same. */
  readonly aroundWork: object;
  readonly problems: Problem[];
  readonly access: (name: string) => Access | undefined;
  readonly labour: (name: string) => Labour | undefined;
  readonly part: (name: string) => Part | undefined;
  readonly sublet: (name: string) => Sublet | undefined;
  readonly tool: (name: string) => Tool | undefined;
  readonly fee: (name: string) => Fee | undefined;
  readonly finding: (name: string) => Finding | undefined;
}

/** The shop that a line is priced by, and where what is wrong with the line is told. */
export type Telling = Pick<Lookup, 'shop' | 'problems'>;

/** What names stand for, each once, in the order in which they are named; names that nothing has are left out. */
export function pick<T>(names: readonly Name[] | undefined, find: (name: string) => T | undefined): T[] {
  if (names === undefined) return [];
  const [only] = names;
  if (names.length === 1 && only !== undefined) {
    // A list that is made with what it holds takes a fifth of the memory of one that is filled, and most lists hold one.
    const one = find(only.name);
    return one === undefined ? [] : [one];
  }
  const found: T[] = [];
  const isLong = names.length > FEW_NAMES;
  for (const name of isLong ? distinct(names) : names) {
    const one = find(typeof name === 'string' ? name : name.name);
    if (one !== undefined && (isLong || !found.includes(one))) found.push(one);
  }
  return found;
}

/** Up to so many are compared with each other. */
const FEW_NAMES = 8;

/** Kept by the list, which stays the same until its line is typed in: an option may name hundreds of jobs. */
const distinctNames = new WeakMap<readonly Name[], readonly string[]>();

/** The names of a list, each once. */
export function distinct(names: readonly Name[]): readonly string[] {
  let found = distinctNames.get(names);
  if (found === undefined) distinctNames.set(names, (found = [...new Set(names.map(({ name }) => name))]));
  return found;
}
