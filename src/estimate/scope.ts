import { changedSince, limits, problem, sameItems, Slot, type Block, type Problem, type Span } from '../language/index.js';
import { closest, heldByRecords, type Choice, type Field, type Kind, type Name, type Record } from '../vocabulary/index.js';
import * as rules from './name-rules.js';

/** Names that nothing has are told of so often; beyond, what rests on them is only marked. */
const MOST_TOLD = 4 * limits.problems;

/** So many names are held against names that nothing has; in a file that has more of both, none is offered instead. */
const MOST_COMPARED = 50_000;

export const NAMED_KINDS = ['access', 'labour', 'part', 'sublet', 'fee', 'tool', 'finding', 'option', 'rate', 'chance', 'inspect', 'coverage', 'stage'] as const;
export type NamedKind = (typeof NAMED_KINDS)[number];
const PLACE_OF_KIND: ReadonlyMap<string, number> = new Map(NAMED_KINDS.map((kind, i) => [kind, i]));

/** The names of one kind in the order in which they are written, and where each stands first. */
interface Names {
  readonly names: readonly string[];
  readonly places: ReadonlyMap<string, number>;
  readonly repeated: boolean;
}

/** The names of a file with where they stand, for as long as the same names stand in the same order. */
interface Sorted {
  readonly byKind: readonly Names[];
  readonly repeated: boolean;
  /** Stands for the names: a record whose names were all found among them need not be looked through again. */
  readonly standIn: object;
}

/** What the same file gave last: a keystroke changes one record, and mostly no name. */
interface LastTime {
  readonly records: readonly Record[];
  readonly sorted: Sorted;
  /** The records of each kind that have names, in the order of `sorted`. */
  readonly ofKinds: readonly (readonly Record[])[];
  /** Whether every name in the file was found. */
  readonly allFound: boolean;
}

const lastTimes = new WeakMap<Record, LastTime>();
const allFoundAmong = new Slot<object>(heldByRecords);

function sortedIn(names: readonly string[]): Names {
  const places = new Map<string, number>();
  names.forEach((name, i) => {
    if (!places.has(name)) places.set(name, i);
  });
  return { names, places, repeated: places.size < names.length };
}

function sortedAnew(ofKinds: readonly (readonly Record[])[], before: Sorted | undefined): Sorted {
  const byKind = ofKinds.map((records, i) => {
    const names = records.map(nameIn);
    const same = before?.byKind[i];
    return same !== undefined && sameItems(same.names, names) ? same : sortedIn(names);
  });
  return before !== undefined && sameItems(before.byKind, byKind) ? before : { byKind, repeated: byKind.some(({ repeated }) => repeated), standIn: {} };
}

function nameIn({ name }: Record): string {
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
function namedBelow(record: Record): readonly Record[] {
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

function isNamed({ name, kind }: Record): boolean {
  return name !== undefined && PLACE_OF_KIND.has(kind.word);
}

/** A record and what is below it, those that have names. */
function namedIn(record: Record): readonly Record[] {
  return isNamed(record) ? [record, ...namedBelow(record)] : namedBelow(record);
}

function sortedByKind(records: readonly Record[]): readonly (readonly Record[])[] {
  const ofKinds = NAMED_KINDS.map((): Record[] => []);
  const shop = records.find((record) => record.kind.word === 'shop');
  for (const record of records) {
    if (record.kind.word === 'shop' && record !== shop) continue; // only the first shop counts
    if (isNamed(record)) (ofKinds[PLACE_OF_KIND.get(record.kind.word) as number] as Record[]).push(record);
    for (const one of namedBelow(record)) (ofKinds[PLACE_OF_KIND.get(one.kind.word) as number] as Record[]).push(one);
  }
  return ofKinds;
}

/** The records of each kind where only a few lines changed and gave no other name than before; undefined where they did. */
function replacedByKind({ records, sorted, ofKinds }: LastTime, now: readonly Record[], changed: readonly number[]): readonly (readonly Record[])[] | undefined {
  if (sorted.repeated) return undefined;
  const replaced = [...ofKinds];
  for (const i of changed) {
    const [old, fresh] = [records[i] as Record, now[i] as Record];
    if (old.kind.word === 'shop' || fresh.kind.word === 'shop') return undefined;
    const [names, others] = [namedIn(old), namedIn(fresh)];
    if (names.length !== others.length) return undefined;
    for (const [j, one] of others.entries()) {
      const { kind } = names[j] as Record;
      if (kind.word !== one.kind.word || nameIn(names[j] as Record) !== nameIn(one)) return undefined;
      const at = PLACE_OF_KIND.get(kind.word) as number;
      const list = replaced[at] === ofKinds[at] ? [...(ofKinds[at] as readonly Record[])] : (replaced[at] as Record[]);
      list[sorted.byKind[at]?.places.get(nameIn(one)) as number] = one;
      replaced[at] = list;
    }
  }
  return replaced;
}

/** Every name of an estimate, by kind: a part and the job that fits it may share one. */
export class Scope {
  /** Blocks with a name that nothing has, where that was not told any more. */
  readonly spoiled = new Set<Block>();
  private readonly sorted: Sorted;
  private readonly ofKinds: readonly (readonly Record[])[];
  private compared = 0;

  /** `file` is the first record of the file itself, by which it is known again. */
  constructor(
    records: readonly Record[],
    private readonly problems: Problem[],
    file = records[0],
  ) {
    const before = file === undefined ? undefined : lastTimes.get(file);
    const changed = before === undefined ? undefined : changedSince(before.records, records);
    const replaced = before === undefined || changed === undefined ? undefined : replacedByKind(before, records, changed);
    this.ofKinds = replaced ?? sortedByKind(records);
    this.sorted = before !== undefined && replaced !== undefined ? before.sorted : sortedAnew(this.ofKinds, before?.sorted);
    if (this.sorted.repeated) this.reportTaken();
    const allFound = this.checkNames(before?.allFound === true && before.sorted === this.sorted && changed !== undefined ? changed.map((i) => records[i] as Record) : records);
    if (file !== undefined) lastTimes.set(file, { records, sorted: this.sorted, ofKinds: this.ofKinds, allFound });
  }

  private reportTaken(): void {
    this.ofKinds.forEach((records, i) => {
      const kind = NAMED_KINDS[i] as NamedKind;
      for (const record of records) {
        const { name } = record;
        const first = name === undefined ? undefined : this.find(kind, name.name);
        if (name !== undefined && first !== undefined && first !== record) this.problems.push(problem(rules.nameTaken, name.at, { kind, name: name.name }, { at: first.name?.at ?? first.at, says: 'The first one' }));
      }
    });
  }

  find(kind: NamedKind, name: string): Record | undefined {
    const place = this.placeOf(kind, name);
    return place === undefined ? undefined : this.named(kind)[place];
  }

  private placeOf(kind: string, name: string): number | undefined {
    return this.namesOfKind(kind)?.places.get(name);
  }

  private namesOfKind(kind: string): Names | undefined {
    return this.sorted.byKind[PLACE_OF_KIND.get(kind) as number];
  }

  /** Every record of a kind that has a name, those that share one too. */
  named(kind: NamedKind): readonly Record[] {
    return this.ofKinds[PLACE_OF_KIND.get(kind) as number] as readonly Record[];
  }

  namesOf(kind: NamedKind): ReadonlyMap<string, Record> {
    const records = this.named(kind);
    return new Map([...(this.namesOfKind(kind) as Names).places].map(([name, place]) => [name, records[place] as Record]));
  }

  /** Reports names of records, and of all below them, that nothing has; true where there are none. */
  private checkNames(records: readonly Record[]): boolean {
    let allFound = true;
    for (const record of records) {
      if (allFoundAmong.get(record) === this.sorted.standIn) continue;
      const before = this.problems.length + this.spoiled.size;
      this.lookThrough(record);
      if (this.problems.length + this.spoiled.size === before) allFoundAmong.set(record, this.sorted.standIn);
      else allFound = false;
    }
    return allFound;
  }

  private lookThrough(record: Record): void {
    const { values, kind } = record;
    const references = referencesIn(kind);
    for (const key in values) {
      const reference = references.get(key);
      if (reference === undefined) continue;
      const { refersTo, builtIn } = reference;
      const value = values[key] as Name | readonly Name[];
      if (Array.isArray(value)) for (const name of value as readonly Name[]) this.checkName(name, refersTo, builtIn);
      else this.checkName(value as Name, refersTo, builtIn);
    }
    for (const child of record.children) this.lookThrough(child);
  }

  private checkName(name: Name, kinds: readonly string[], builtIn: Readonly<{ [name: string]: string }>): void {
    if (Object.hasOwn(builtIn, name.name)) return;
    let found = 0;
    for (const kind of kinds) if (this.placeOf(kind, name.name) !== undefined) found++;
    if (found === 1) return;
    if (found > 1) {
      this.problems.push(problem(rules.ambiguousName, name.at, { name: name.name, kinds }));
      return;
    }
    if (this.problems.length > MOST_TOLD) {
      this.spoiled.add(name.at.block);
      return;
    }
    const isA = NAMED_KINDS.find((kind) => this.placeOf(kind, name.name) !== undefined);
    this.problems.push(problem(rules.unknownName, name.at, { name: name.name, kinds, isA, meant: this.meantBy(name, kinds, builtIn) }));
  }

  private meantBy({ name }: Name, kinds: readonly string[], builtIn: Readonly<{ [name: string]: string }>): string | undefined {
    if (this.problems.length > limits.problems || this.compared > MOST_COMPARED) return undefined;
    const known = kinds.flatMap((kind) => [...(this.namesOfKind(kind)?.places.keys() ?? [])]).concat(Object.keys(builtIn));
    this.compared += known.length;
    return closest(name, known);
  }
}

interface Reference {
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

/** The words of a list of choices, each once. */
export function wordsIn<W extends string>(choices: readonly Choice<W>[] | undefined): W[] {
  return choices === undefined ? [] : choices.length === 1 ? [(choices[0] as Choice<W>).word] : [...new Set(choices.map((choice) => choice.word))];
}

/** Reports names that stand twice behind one word of a record. */
export function reportRepeats(names: readonly Name[], word: string, problems: Problem[]): void {
  if (names.length < 2) return;
  const seen = new Map<string, Span>();
  let told = 0;
  for (const { name, at } of names) {
    const first = seen.get(name);
    if (first === undefined) seen.set(name, at);
    else if (told++ < limits.problems) problems.push(problem(rules.saidBefore, at, { name, word }, { at: first, says: 'The first time' }));
  }
}
