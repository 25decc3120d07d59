/**
 * An option as pieces that wait for each other, made a second time from the records: see "When it is ready" in the guide
 * and what the manual says of `done`, `after`, `apart after`, `arrives`, `back in` and `answer`. No line is the product's.
 */
import { amount, list, names } from './prices.js';
import { compare, fromDigits, minus, nothing, per, type Rational } from './rational.js';
import type { Json, Written } from './reader.js';
import type { Oracle, OracleJob, OracleOption, OraclePlan } from './totals.js';

/** Work takes a technician for its hours; a wait takes nobody, for days, or weeks and months by the calendar. */
export interface Piece {
  readonly says: string;
  readonly work: boolean;
  /** Hours of work, or of a wait its days, weeks or months. */
  readonly length: Rational;
  readonly unit: 'h' | 'd' | 'wk' | 'mo';
  readonly after: Set<Piece>;
}

interface Part {
  readonly of: OracleJob;
  readonly first: Piece;
  readonly last: Piece;
}

const hoursOf = ({ likely, unit }: Written): Rational => per(fromDigits(likely), unit === 'min' ? 60n : 1n);
const least = (a: Rational, b: Rational) => (compare(a, b) <= 0 ? a : b);

/** All pieces that the day hangs on. Putting an old core together never does. */
export function piecesOf(oracle: Oracle, option: OracleOption, plan: OraclePlan): Piece[] {
  return new Pieces(oracle, option, plan).build();
}

class Pieces {
  private readonly all: Piece[] = [];
  private readonly arrives = new Map<Json, Piece>();
  private readonly away = new Map<Json, Piece>();
  private readonly opened = new Map<string, readonly Piece[]>();
  private readonly parts: Part[] = [];
  private readonly single = new Map<Json, Piece>();
  private readonly late = new Set<Json>();
  private decided: readonly Piece[] = [];
  private readonly before: readonly string[];
  private readonly leftOpen: readonly string[];
  private readonly stagedJobs: ReadonlySet<Json>;

  constructor(private readonly oracle: Oracle, private readonly option: OracleOption, private readonly plan: OraclePlan) {
    const { work } = oracle;
    this.before = work.openedBy(work.stages);
    this.leftOpen = option.name === 'as-it-stands' ? this.before : [];
    this.stagedJobs = work.staged(work.stages);
  }

  build(): Piece[] {
    const { plan: { jobs, ways }, oracle: { work, prices } } = this;
    const inStage = jobs.filter(({ job }) => job['done'] !== 'first' && this.stagedJobs.has(job));
    const other = jobs.filter((one) => !inStage.includes(one));
    const done = (when: unknown) => other.filter(({ job }) => job['done'] === when);

    const firsts = done('first').map((one) => this.whole(one, []));
    this.decided = firsts;
    for (const name of this.before) this.open(name, firsts);
    const stageBase = [...this.opened.values()].flat();
    for (const one of inStage) this.split(one, false);
    this.goods(inStage, [...inStage.flatMap(({ job }) => work.used(job))], [], firsts, stageBase);
    const known = [...firsts, ...stageBase, ...this.parts.map(({ last }) => last)];
    const answer = amount(prices.all.find(({ kind }) => kind === 'estimate')?.['answer']);
    this.decided = answer === undefined ? known : [this.wait('the answer', answer, known)];

    for (const name of ways) if (!this.before.includes(name)) this.open(name, this.decided);
    const base = [...[...this.opened.values()].flat(), ...(this.before.length > 0 ? this.decided : [])];
    const between = done(undefined);
    for (const one of between) this.split(one, this.before.length > 0);
    const closing = ways.filter((name) => !this.leftOpen.includes(name));
    this.findLate(done('last'), closing);
    this.goods(between, [...this.option.things, ...closing.flatMap((name) => work.goodsOf(this.way(name)))], ways, this.decided, base);
    this.follow([...done('first'), ...inStage, ...between]);
    this.waitForLoose(done('last'), base);

    const closed = closing.flatMap((name) => this.close(name));
    const ends = [...firsts, ...(work.stages.length > 0 ? this.decided : []), ...this.parts.map(({ last }) => last), ...closed];
    for (const one of done('last')) this.whole(one, [...ends, ...this.used(one.job)]);
    this.follow(done('last'));
    return this.all;
  }

  private way(name: string): Json {
    return this.oracle.prices.find('access', name) as Json;
  }

  private piece(says: string, work: boolean, length: Rational, unit: Piece['unit'], after: Iterable<Piece>): Piece {
    const made: Piece = { says, work, length, unit, after: new Set(after) };
    this.all.push(made);
    return made;
  }

  private wait(says: string, time: Written, after: Iterable<Piece>): Piece {
    return this.piece(says, false, fromDigits(time.likely), time.unit === 'wk' || time.unit === 'mo' ? time.unit : 'd', after);
  }

  private whole({ job, line }: OracleJob, after: readonly Piece[]): Piece {
    const made = this.piece(job.title as string, true, line.hours[1], 'h', after);
    this.single.set(job, made);
    return made;
  }

  private arrival(thing: Json, ordered: readonly Piece[]): readonly Piece[] {
    const known = this.arrives.get(thing);
    if (known !== undefined) return [known];
    const time = amount(thing['arrives']);
    if (time === undefined || (thing.kind === 'tool' && list(this.oracle.prices.shop['tool']).includes(thing))) return [];
    const made = this.wait(`${thing.title ?? ''} arrives`, time, ordered);
    this.arrives.set(thing, made);
    return [made];
  }

  private tools(record: Json): Piece[] {
    return this.oracle.work.toolsOf(record).flatMap((tool) => this.arrival(tool, this.decided));
  }

  private open(name: string, from: readonly Piece[]): void {
    const way = this.way(name);
    const after = [...from, ...this.tools(way)];
    const time = amount(way['remove']);
    this.opened.set(name, time === undefined ? after : [this.piece(`${name}: remove`, true, hoursOf(time), 'h', after)]);
  }

  private takes({ with: ways }: OracleJob, name: string): boolean {
    const gives = this.oracle.work.given([name]);
    return ways.some((way) => gives.has(way));
  }

  private split(one: OracleJob, alsoDecided: boolean): void {
    const opened = [...this.opened].filter(([name]) => this.takes(one, name)).flatMap(([, pieces]) => pieces);
    const after = [...(opened.length > 0 ? opened : this.decided), ...(alsoDecided ? this.decided : []), ...this.tools(one.job)];
    const hours = one.line.hours[1];
    const apart = amount(one.job['apart']);
    const title = one.job.title as string;
    if (apart === undefined) {
      const made = this.piece(title, true, hours, 'h', after);
      this.parts.push({ of: one, first: made, last: made });
      return;
    }
    const start = least(hoursOf(apart), hours);
    const first = this.piece(`${title}: apart`, true, start, 'h', after);
    this.parts.push({ of: one, first, last: this.piece(`${title}: the rest`, true, minus(hours, start), 'h', [first]) });
  }

  /** Orders parts and sends outside work away. */
  private goods(jobs: readonly OracleJob[], things: readonly Json[], ways: readonly string[], ordered: readonly Piece[], base: readonly Piece[]): void {
    const { work } = this.oracle;
    const own = this.parts.filter(({ of }) => jobs.includes(of));
    for (const part of things) if (part.kind === 'part') this.arrival(part, ordered);
    for (const sublet of things) {
      const back = amount(sublet['backIn']);
      if (sublet.kind !== 'sublet' || this.away.has(sublet) || (back === undefined && names(sublet['after']).length === 0)) continue;
      const apart = own.filter(({ of, first, last }) => first !== last && work.used(of.job).includes(sublet)).map(({ first }) => first);
      const way = ways.find((name) => work.goodsOf(this.way(name)).includes(sublet));
      const from = way === undefined ? [...(base.length > 0 ? base : this.decided), ...ordered] : [...(this.opened.get(way) as readonly Piece[]), ...(this.before.includes(way) ? this.decided : [])];
      const after = apart.length > 0 ? apart : from;
      const says = `${sublet.title ?? ''}: away`;
      this.away.set(sublet, back === undefined ? this.piece(says, false, nothing, 'd', after) : this.wait(says, back, after));
    }
    for (const { of, last } of own) for (const one of this.used(of.job)) last.after.add(one);
  }

  private used(job: Json): Piece[] {
    return this.oracle.work.used(job).flatMap((thing) => this.arrives.get(thing) ?? this.away.get(thing) ?? []);
  }

  /** Outside work that comes after what is done last holds nothing else up. */
  private findLate(lasts: readonly OracleJob[], closing: readonly string[]): void {
    const known = new Set(lasts.flatMap(({ job }) => job.name ?? []));
    const sublets = [...this.option.things, ...closing.flatMap((name) => this.oracle.work.goodsOf(this.way(name)))].filter(({ kind }) => kind === 'sublet');
    for (let size = -1; size !== this.late.size;) {
      size = this.late.size;
      for (const sublet of sublets) if (names(sublet['after']).some((name) => known.has(name))) {
        this.late.add(sublet);
        if (sublet.name !== undefined) known.add(sublet.name);
      }
    }
  }

  private follow(jobs: readonly OracleJob[]): void {
    const link = (piece: Piece, after: readonly Piece[]) => {
      for (const one of after) if (one !== piece) piece.after.add(one);
    };
    for (const { job } of jobs) {
      const piece = this.parts.find(({ of }) => of.job === job)?.first ?? this.single.get(job);
      if (piece !== undefined) link(piece, names(job['after']).flatMap((name) => this.named(name, undefined)));
    }
    for (const [sublet, piece] of this.away) link(piece, names(sublet['after']).flatMap((name) => this.named(name, sublet)));
  }

  /** What ends with a name. Outside work that a job sends away leaves when that job's things are apart. */
  private named(name: string, sublet: Json | undefined): readonly Piece[] {
    const part = this.parts.find(({ of: { job } }) => job.name === name);
    if (part !== undefined) return [sublet !== undefined && this.oracle.work.used(part.of.job).includes(sublet) ? part.first : part.last];
    for (const map of [this.away, this.arrives, this.single]) for (const [thing, piece] of map) if (thing.name === name && thing.kind !== 'tool') return [piece];
    return [];
  }

  /** What no job uses holds up every job but those that it waits for itself. */
  private waitForLoose(lasts: readonly OracleJob[], base: readonly Piece[]): void {
    const { work } = this.oracle;
    const jobs = [...this.parts.map(({ of }) => of), ...lasts].map(({ job }) => job);
    const loose = this.option.things.filter((thing) => !this.late.has(thing) && !jobs.some((job) => work.used(job).includes(thing))).flatMap((thing) => this.arrives.get(thing) ?? this.away.get(thing) ?? []);
    for (const piece of loose) {
      if (base.includes(piece)) continue;
      const before = allBefore(piece);
      for (const { last } of this.parts) if (!before.has(last)) last.after.add(piece);
    }
  }

  private close(name: string): readonly Piece[] {
    const way = this.way(name);
    const inside = this.parts.filter(({ of }) => this.takes(of, name)).map(({ last }) => last);
    const there = (thing: Json) => (this.late.has(thing) ? [] : (this.arrives.get(thing) ?? this.away.get(thing) ?? []));
    const everything = [...this.arrives.keys(), ...this.away.keys()].filter(({ kind }) => kind !== 'tool');
    const goods = [...this.oracle.work.goodsOf(way), ...(inside.length > 0 ? [] : everything)].flatMap(there);
    const after = [...(this.opened.get(name) as readonly Piece[]), ...(this.before.includes(name) ? this.decided : []), ...inside, ...goods];
    const time = amount(way['refit']);
    return time === undefined ? after : [this.piece(`${name}: refit`, true, hoursOf(time), 'h', after)];
  }
}

function allBefore(piece: Piece): ReadonlySet<Piece> {
  const seen = new Set([piece]);
  for (const one of seen) for (const next of one.after) seen.add(next);
  return seen;
}
