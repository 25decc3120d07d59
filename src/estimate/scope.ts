import { changedSince, limits, problem, Slot, type Block, type Problem } from '../language/index.js';
import { closest, heldByRecords, type Kind, type Name, type Record } from '../vocabulary/index.js';
import * as rules from './name-rules.js';
import { NAMED_KINDS, PLACE_OF_KIND, type NamedKind } from './named-records.js';
import { replacedByKind, sortedAnew, sortedByKind, type Names, type Sorted, type SortedRecords } from './names-by-kind.js';
import { referencesIn, wordFor, type Reference } from './references.js';

/** Names that nothing has are told of so often; beyond, what rests on them is only marked. */
const MOST_TOLD = 4 * limits.problems;

/** So many names are held against names that nothing has; in a file that has more of both, none is offered instead. */
const MOST_COMPARED = 50_000;

/** What the same file gave last. */
interface LastTime extends SortedRecords {
  /** Whether every name in the file was found. */
  readonly allFound: boolean;
}

const lastTimes = new WeakMap<Record, LastTime>();
const allFoundAmong = new Slot<object>(heldByRecords);

/** Every name of an estimate, by kind: a part and the job that fits it may share one. */
export class Scope {
  /** Blocks with a name that nothing has, where that was not told any more. */
  readonly spoiled = new Set<Block>();
  private readonly sorted: Sorted;
  private readonly ofKinds: readonly (readonly Record[])[];
  private compared = 0;
  /** What the names that nothing has may be names of. */
  private readonly unknown = new Map<Problem, readonly string[]>();

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
      const value = values[key] as Name | readonly Name[];
      if (Array.isArray(value)) for (const name of value as readonly Name[]) this.checkName(name, reference, kind);
      else this.checkName(value as Name, reference, kind);
    }
    for (const child of record.children) this.lookThrough(child);
  }

  private checkName(name: Name, { refersTo: kinds, builtIn }: Reference, on: Kind): void {
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
    const goesBehind = isA === undefined ? undefined : wordFor(isA, on);
    const meant = goesBehind === undefined ? this.meantBy(name, kinds, builtIn) : undefined;
    const told = problem(rules.unknownName, name.at, { name: name.name, kinds, isA, meant, goesBehind });
    this.unknown.set(told, kinds);
    this.problems.push(told);
  }

  /** What to say of a name that nothing has and the word behind it, where that word, or both with a hyphen, is a name. */
  inTwoWords(half: Problem, end: number): Problem | undefined {
    const kinds = this.unknown.get(half);
    if (kinds === undefined) return undefined;
    const at = { ...half.at, end };
    const [first = '', second = ''] = at.block.text.slice(at.start, end).split(/[ \t]+/);
    const meant = [`${first}-${second}`, second].find((name) => kinds.some((kind) => this.placeOf(kind, name) !== undefined));
    return meant === undefined ? undefined : problem(rules.unknownName, at, { name: `${first} ${second}`, kinds, isA: undefined, meant, goesBehind: undefined });
  }

  private meantBy({ name }: Name, kinds: readonly string[], builtIn: Readonly<{ [name: string]: string }>): string | undefined {
    if (this.problems.length > limits.problems || this.compared > MOST_COMPARED) return undefined;
    const known = kinds.flatMap((kind) => [...(this.namesOfKind(kind)?.places.keys() ?? [])]).concat(Object.keys(builtIn));
    this.compared += known.length;
    return closest(name, known);
  }
}
