import { LastTime, type Changes } from '../../language/index.js';
import { referencesIn, type Resolved } from '../../estimate/index.js';
import type { Amount, Field, Name, Record } from '../../vocabulary/index.js';

/** From low to high a figure may grow so many times before it says nothing, or a decimal point has slipped. */
export const MOST_TIMES = 10;

/** The lines of an estimate of which the checks have something to ask. */
export interface AllFacts {
  /** Whether some line names a line of that kind so. */
  readonly names: (kind: string, name: string) => boolean;
  /** Lines with a name that no line names, in the order of the records. */
  readonly unnamed: () => readonly Record[];
  /** Figures whose range says nothing, with their lines. */
  readonly wide: () => readonly { readonly record: Record; readonly amounts: readonly Amount[] }[];
}

/** Facts of every line; the answer holds until the next call for the same file. */
export function factsOf({ records, estimate: { uri } }: Pick<Resolved, 'records' | 'estimate'>): AllFacts {
  // Known again by the first line of the estimate’s own file, which typing further down leaves as it is.
  return lastTime.for(records, records.find(({ block }) => block.uri === uri));
}

class FactsOfLines implements AllFacts {
  /** How often each line is named, by its kind. */
  private readonly named = new Map<string, Map<string, number>>();
  /** Where the lines of a name stand, by their kind; made when a line is typed in. */
  private places: Places | undefined;
  private readonly unnamedAt = new Set<number>();
  private readonly wideAt = new Map<number, readonly Amount[]>();

  constructor(private records: readonly Record[]) {
    records.forEach((record, i) => this.look(record, i));
    records.forEach((record, i) => this.placeUnnamed(record, i));
  }

  /** Takes over what differs. */
  follow({ places: changed, old, now }: Changes<Record>): this {
    const places = (this.places ??= placesByName(old));
    for (const i of changed) this.replace(i, old[i] as Record, now[i] as Record, places);
    this.records = now;
    return this;
  }

  names(kind: string, name: string): boolean {
    return this.named.get(kind)?.has(name) === true;
  }

  unnamed(): readonly Record[] {
    return [...this.unnamedAt].sort((a, b) => a - b).map((i) => this.records[i] as Record);
  }

  wide(): readonly { readonly record: Record; readonly amounts: readonly Amount[] }[] {
    return [...this.wideAt].sort(([a], [b]) => a - b).map(([i, amounts]) => ({ record: this.records[i] as Record, amounts }));
  }

  private replace(i: number, old: Record, now: Record, places: Places): void {
    if (old.name !== undefined) places.get(old.kind.word)?.get(old.name.name)?.delete(i);
    this.unnamedAt.delete(i);
    eachName(old, (kind, name) => this.count(kind, name, -1));
    this.look(now, i);
    if (now.name !== undefined) put(places, now.kind.word, now.name.name, i);
    this.placeUnnamed(now, i);
  }

  private look(record: Record, i: number): void {
    const wide = eachName(record, (kind, name) => this.count(kind, name, 1));
    if (wide.length > 0) this.wideAt.set(i, wide);
    else this.wideAt.delete(i);
  }

  private placeUnnamed({ kind, name }: Record, i: number): void {
    if (name !== undefined && !this.names(kind.word, name.name)) this.unnamedAt.add(i);
  }

  private count(kind: string, name: string, by: number): void {
    let ofKind = this.named.get(kind);
    if (ofKind === undefined) this.named.set(kind, (ofKind = new Map<string, number>()));
    const now = (ofKind.get(name) ?? 0) + by;
    if (now === 0) ofKind.delete(name);
    else ofKind.set(name, now);
    for (const i of this.places?.get(kind)?.get(name) ?? []) {
      if (now === 0) this.unnamedAt.add(i);
      else this.unnamedAt.delete(i);
    }
  }
}

const lastTime = new LastTime<Record, FactsOfLines>((records) => new FactsOfLines(records), (facts, changes) => facts.follow(changes));

/** Where the lines of a name stand, by kind and name. */
type Places = Map<string, Map<string, Set<number>>>;

function placesByName(records: readonly Record[]): Places {
  const places: Places = new Map();
  records.forEach(({ kind, name }, i) => {
    if (name !== undefined) put(places, kind.word, name.name, i);
  });
  return places;
}

function put(places: Places, kind: string, name: string, i: number): void {
  let ofKind = places.get(kind);
  if (ofKind === undefined) places.set(kind, (ofKind = new Map<string, Set<number>>()));
  const same = ofKind.get(name);
  if (same === undefined) ofKind.set(name, new Set([i]));
  else same.add(i);
}

const NONE: readonly Amount[] = [];

/** Tells every name that a line, or one below it, says, under each kind that may be meant, and gives the figures whose range says nothing. */
function eachName({ kind, values, children }: Record, tell: (kind: string, name: string) => void): readonly Amount[] {
  let wide = NONE;
  const references = referencesIn(kind);
  for (const key in values) {
    const reference = references.get(key);
    if (reference !== undefined) {
      const said = values[key] as Name | readonly Name[];
      for (const { name } of 'name' in said ? [said] : said) for (const one of reference.refersTo) tell(one, name);
    } else if ((kind.fields[key] as Field).value.measures !== undefined && isWide(values[key] as Amount)) wide = [...wide, values[key] as Amount];
  }
  for (const child of children) {
    const below = eachName(child, tell);
    if (below.length > 0) wide = [...wide, ...below];
  }
  return wide;
}

/** One figure stands for all three where no range was written, which is nearly everywhere. Readings have none. */
function isWide({ low, high }: Amount): boolean {
  return low !== high && !low.isZero() && high.gte(low.times(MOST_TIMES));
}
