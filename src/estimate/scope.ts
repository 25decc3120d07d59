import { limits, problem, Slot, type Block, type Problem, type Span } from '../language/index.js';
import { closest, type Choice, type Field, type Kind, type Name, type Record } from '../vocabulary/index.js';
import * as rules from './name-rules.js';
import { sameItems } from './remember.js';

/** Names that nothing has are told of so often; beyond, what rests on them is only marked. */
const MOST_TOLD = 4 * limits.problems;

/** So many names are held against names that nothing has; in a file that has more of both, none is offered instead. */
const MOST_COMPARED = 50_000;

const NAMED_KINDS = ['access', 'labour', 'part', 'sublet', 'fee', 'tool', 'finding', 'option', 'rate', 'chance', 'inspect', 'coverage', 'stage'] as const;
export type NamedKind = (typeof NAMED_KINDS)[number];

/** The names of one kind in the order in which they are written, and where each stands first. */
interface Names {
  readonly names: readonly string[];
  readonly places: ReadonlyMap<string, number>;
  readonly repeated: boolean;
}

/**
 * The names that the same file gave last, and an object that stands for them: as long as a file gives the same names,
 * they need not be sorted in anew, nor a record be looked through again whose names were all found.
 */
interface Before {
  readonly byKind: readonly Names[];
  readonly standIn: object;
}

const namesBefore = new Slot<Before>();
const allFoundAmong = new Slot<object>();

function namesAsBefore(first: Record | undefined, byKind: readonly (readonly string[])[]): Before {
  const before = first === undefined ? undefined : namesBefore.get(first);
  const now = byKind.map((names, i) => {
    const same = before?.byKind[i];
    return same !== undefined && sameItems(same.names, names) ? same : sortedIn(names);
  });
  if (before !== undefined && sameItems(before.byKind, now)) return before;
  const made: Before = { byKind: now, standIn: {} };
  if (first !== undefined) namesBefore.set(first, made);
  return made;
}

function sortedIn(names: readonly string[]): Names {
  const places = new Map<string, number>();
  names.forEach((name, i) => {
    if (!places.has(name)) places.set(name, i);
  });
  return { names, places, repeated: places.size < names.length };
}

const chancesFound = new Slot<readonly Record[]>();
const NONE: readonly Record[] = [];

/** The chances below a record: they have names, though they stand below the work they belong to. */
function chancesBelow(record: Record): readonly Record[] {
  if (record.children.length === 0) return NONE;
  let found = chancesFound.get(record);
  if (found === undefined) {
    const all = record.children.flatMap((child) => (child.kind.word === 'chance' ? [child, ...chancesBelow(child)] : chancesBelow(child)));
    found = all.length === 0 ? NONE : all;
    chancesFound.set(record, found);
  }
  return found;
}

/** Every record with a name, in the order in which the first of several is the one that counts. */
function eachNamed(records: readonly Record[], visit: (record: Record, name: Name) => void): void {
  const add = (record: Record) => {
    if (record.name !== undefined) visit(record, record.name);
  };
  const shop = records.find((record) => record.kind.word === 'shop');
  for (const record of records) {
    add(record);
    if (record.kind.word === 'shop' && record !== shop) continue; // only the first shop counts
    for (const chance of chancesBelow(record)) add(chance);
    for (const child of record.children) if (child.kind.word === 'rate' || child.kind.word === 'tool' || child.kind.word === 'fee') add(child);
  }
}

interface OfKind {
  readonly names: string[];
  readonly records: Record[];
}

/** Every name of an estimate, by kind: a part and the job that fits it may share one. */
export class Scope {
  /** Blocks with a name that nothing has, where that was not told any more. */
  readonly spoiled = new Set<Block>();
  private readonly byKind = new Map<string, OfKind>(NAMED_KINDS.map((kind) => [kind, { names: [], records: [] }]));
  private readonly known = new Map<string, Names>();
  private readonly namesStandIn: object;
  private compared = 0;

  /** `file` is the first record of the file itself, by which it is known again. */
  constructor(
    records: readonly Record[],
    private readonly problems: Problem[],
    file = records[0],
  ) {
    eachNamed(records, (record, name) => {
      const ofKind = this.byKind.get(record.kind.word);
      if (ofKind === undefined) return;
      ofKind.names.push(name.name);
      ofKind.records.push(record);
    });
    const { byKind, standIn } = namesAsBefore(file, [...this.byKind.values()].map(({ names }) => names));
    NAMED_KINDS.forEach((kind, i) => this.known.set(kind, byKind[i] as Names));
    this.namesStandIn = standIn;
    if (byKind.some(({ repeated }) => repeated)) this.reportTaken(records);
  }

  private reportTaken(records: readonly Record[]): void {
    eachNamed(records, (record, name) => {
      const kind = record.kind.word as NamedKind;
      const first = this.find(kind, name.name);
      if (first !== undefined && first !== record) this.problems.push(problem(rules.nameTaken, name.at, { kind, name: name.name }, { at: first.name?.at ?? first.at, says: 'The first one' }));
    });
  }

  find(kind: NamedKind, name: string): Record | undefined {
    const place = this.known.get(kind)?.places.get(name);
    return place === undefined ? undefined : this.byKind.get(kind)?.records[place];
  }

  /** Every record of a kind that has a name, those that share one too. */
  named(kind: NamedKind): readonly Record[] {
    return (this.byKind.get(kind) as OfKind).records;
  }

  namesOf(kind: NamedKind): ReadonlyMap<string, Record> {
    const { records } = this.byKind.get(kind) as OfKind;
    return new Map([...(this.known.get(kind) as Names).places].map(([name, place]) => [name, records[place] as Record]));
  }

  /** Reports names of a record, and of all below it, that nothing has. */
  checkNames(record: Record): void {
    if (allFoundAmong.get(record) === this.namesStandIn) return;
    const before = this.problems.length + this.spoiled.size;
    this.lookThrough(record);
    if (this.problems.length + this.spoiled.size === before) allFoundAmong.set(record, this.namesStandIn);
  }

  private lookThrough(record: Record): void {
    for (const { key, refersTo, builtIn } of referencesOf(record.kind)) {
      const value = record.values[key] as Name | readonly Name[] | undefined;
      if (value === undefined) continue;
      if (Array.isArray(value)) for (const name of value as readonly Name[]) this.checkName(name, refersTo, builtIn);
      else this.checkName(value as Name, refersTo, builtIn);
    }
    for (const child of record.children) this.lookThrough(child);
  }

  private checkName(name: Name, kinds: readonly string[], builtIn: Readonly<{ [name: string]: string }>): void {
    if (Object.hasOwn(builtIn, name.name)) return;
    let found = 0;
    for (const kind of kinds) if (this.known.get(kind)?.places.has(name.name) === true) found++;
    if (found === 1) return;
    if (found > 1) {
      this.problems.push(problem(rules.ambiguousName, name.at, { name: name.name, kinds }));
      return;
    }
    if (this.problems.length > MOST_TOLD) {
      this.spoiled.add(name.at.block);
      return;
    }
    const isA = NAMED_KINDS.find((kind) => this.known.get(kind)?.places.has(name.name) === true);
    this.problems.push(problem(rules.unknownName, name.at, { name: name.name, kinds, isA, meant: this.meantBy(name, kinds, builtIn) }));
  }

  private meantBy({ name }: Name, kinds: readonly string[], builtIn: Readonly<{ [name: string]: string }>): string | undefined {
    if (this.problems.length > limits.problems || this.compared > MOST_COMPARED) return undefined;
    const known = kinds.flatMap((kind) => [...(this.known.get(kind)?.places.keys() ?? [])]).concat(Object.keys(builtIn));
    this.compared += known.length;
    return closest(name, known);
  }
}

interface Reference {
  readonly key: string;
  readonly refersTo: readonly string[];
  readonly builtIn: Readonly<{ [name: string]: string }>;
}

const referenceCache = new Map<Kind, readonly Reference[]>();

/** The slots of a kind that name other records. */
export function referencesOf(kind: Kind): readonly Reference[] {
  let found = referenceCache.get(kind);
  if (found === undefined) {
    found = Object.entries(kind.fields).flatMap(([key, field]) => {
      const { refersTo, builtIn } = (field as Field).value;
      return refersTo === undefined ? [] : [{ key, refersTo, builtIn: builtIn ?? {} }];
    });
    referenceCache.set(kind, found);
  }
  return found;
}

/** The words of a list of choices, each once. */
export function wordsIn<W extends string>(choices: readonly Choice<W>[] | undefined): W[] {
  return [...new Set((choices ?? []).map((choice) => choice.word))];
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
