import { limits, problem, type Block, type Problem, type Span } from '../language/index.js';
import { closest, type Choice, type Field, type Kind, type Name, type Record } from '../vocabulary/index.js';
import * as rules from './name-rules.js';
import { sameItems } from './remember.js';

/** Names that nothing has are told of so often; beyond, what rests on them is only marked. */
const MOST_TOLD = 4 * limits.problems;

const NAMED_KINDS = ['access', 'labour', 'part', 'sublet', 'fee', 'tool', 'finding', 'option', 'rate', 'chance', 'inspect', 'coverage', 'stage'] as const;
export type NamedKind = (typeof NAMED_KINDS)[number];

/**
 * The names that the same file gave last, and an object that stands for them: as long as a file gives the same names,
 * a record whose names were all found need not be looked through again.
 */
const namesBefore = new WeakMap<Record, { readonly names: readonly string[]; readonly standIn: object }>();
const allFoundAmong = new WeakMap<Record, object>();

function standInFor(first: Record | undefined, names: readonly string[]): object {
  if (first === undefined) return {};
  const before = namesBefore.get(first);
  if (before !== undefined && sameItems(before.names, names)) return before.standIn;
  const standIn = {};
  namesBefore.set(first, { names, standIn });
  return standIn;
}

const chancesFound = new WeakMap<Record, readonly Record[]>();
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

/** Every name of an estimate, by kind: a part and the job that fits it may share one. */
export class Scope {
  /** Blocks with a name that nothing has, where that was not told any more. */
  readonly spoiled = new Set<Block>();
  private readonly byKind = new Map<string, Map<string, Record>>(NAMED_KINDS.map((kind) => [kind, new Map<string, Record>()]));
  private readonly namesStandIn: object;

  constructor(
    records: readonly Record[],
    private readonly problems: Problem[],
  ) {
    const shop = records.find((record) => record.kind.word === 'shop');
    for (const record of records) {
      this.add(record);
      if (record.kind.word === 'shop' && record !== shop) continue; // only the first shop counts
      for (const chance of chancesBelow(record)) this.add(chance);
      for (const child of record.children) if (child.kind.word === 'rate' || child.kind.word === 'tool' || child.kind.word === 'fee') this.add(child);
    }
    const names: string[] = [];
    for (const [kind, ofKind] of this.byKind) names.push(`${kind}:`, ...ofKind.keys());
    this.namesStandIn = standInFor(records[0], names);
  }

  private add(record: Record): void {
    const names = this.byKind.get(record.kind.word);
    if (names === undefined || record.name === undefined) return;
    const first = names.get(record.name.name);
    if (first === undefined) names.set(record.name.name, record);
    else this.problems.push(problem(rules.nameTaken, record.name.at, { kind: record.kind.word, name: record.name.name }, { at: first.name?.at ?? first.at, says: 'The first one' }));
  }

  find(kind: NamedKind, name: string): Record | undefined {
    return this.byKind.get(kind)?.get(name);
  }

  namesOf(kind: NamedKind): ReadonlyMap<string, Record> {
    return this.byKind.get(kind) as Map<string, Record>;
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
    for (const kind of kinds) if (this.byKind.get(kind)?.has(name.name) === true) found++;
    if (found === 1) return;
    if (found > 1) {
      this.problems.push(problem(rules.ambiguousName, name.at, { name: name.name, kinds }));
      return;
    }
    const known = kinds.flatMap((kind) => [...(this.byKind.get(kind)?.keys() ?? [])]).concat(Object.keys(builtIn));
    const isA = NAMED_KINDS.find((kind) => this.byKind.get(kind)?.has(name.name) === true);
    if (this.problems.length > MOST_TOLD) {
      this.spoiled.add(name.at.block);
      return;
    }
    this.problems.push(problem(rules.unknownName, name.at, { name: name.name, kinds, isA, meant: this.problems.length > limits.problems ? undefined : closest(name.name, known) }));
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
  for (const { name, at } of names) {
    const first = seen.get(name);
    if (first === undefined) seen.set(name, at);
    else problems.push(problem(rules.saidBefore, at, { name, word }, { at: first, says: 'The first time' }));
  }
}
