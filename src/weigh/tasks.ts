import { assembleTitle, topicsOf, type Access, type Estimate, type Labour, type Mode, type Part, type Sublet, type Tool } from '../estimate/index.js';
import { zero, type Amount, type Name, type Topic } from '../vocabulary/index.js';
import { constant, least, remainder, type Figure } from './figure.js';
import type { PlannedJob } from './plan.js';
import { lateOutside, leftOpen, partsOf, subletsOf, type PlannedWork } from './planned-work.js';
import { inHours } from './price-labour.js';
import type { Task } from './task.js';
import { TaskDrafts } from './task-drafts.js';

/** What a part that is an engine stands for. */
const ENGINES: readonly Topic[] = ['used-engine', 'exchange-engine'];

/** Whether `after` is followed; it is not where it goes round in a circle. */
export type Following = 'after' | 'no after';

/**
 * The tasks of an option. First what is done before the customer decides, then what stages open and do, then the answer;
 * then parts and tools are ordered and the engine is got at. Work starts when its way in is open and its tools, parts and
 * outside work are there; where it says how far things come apart, that first part waits for no parts, and outside work
 * leaves after it. Parts and outside work that no job uses are waited for by every job. A way in is closed when all the
 * work that takes it is done, and what is done last comes after all of that. Putting an old core together never holds up
 * the vehicle.
 *
 * @param turned what has turned up: chances that happen, each with the ways in that it takes beyond the option's own.
 * They are found when the engine is got at and things are apart, and their parts are ordered then.
 */
export function tasksOf(work: PlannedWork, turned: readonly PlannedWork[], estimate: Pick<Estimate, 'header'>, following: Following): readonly Task[] {
  return new TaskList(following).build(work, turned, estimate.header?.answer);
}

interface Piece {
  readonly planned: PlannedJob;
  /** What it belongs to: the option's own work, or what turned up. */
  readonly of: PlannedWork;
  /** Where its own waits begin. */
  readonly first: number;
  readonly last: number;
}

class TaskList {
  private readonly drafts = new TaskDrafts();
  private readonly arrivals = new Map<object, number>();
  private readonly away = new Map<Sublet, number>();
  private readonly opened = new Map<Access, readonly number[]>();
  private readonly pieces: Piece[] = [];
  /** The first piece of each name. */
  private piecesByName: ReadonlyMap<string | undefined, Piece> = new Map();
  /** Outside work that comes after what is done last: nothing else waits for it. */
  private late: ReadonlySet<Sublet> = new Set();
  /** What everything but the first jobs and stages waits for. */
  private decided: readonly number[] = [];
  /** Ways in that stages opened: what needs them later waits for the decision too. */
  private openedBefore: ReadonlySet<Access> = new Set();

  constructor(private readonly following: Following) {}

  build(work: PlannedWork, turned: readonly PlannedWork[], answer: Amount | undefined): readonly Task[] {
    // What is done first comes before a stage that names it, too.
    const staged = work.jobs.filter(({ job }) => job.done !== 'first' && work.staged?.labour.includes(job) === true);
    const unstaged = work.jobs.filter((planned) => !staged.includes(planned));
    const first = unstaged.filter(({ job }) => job.done === 'first');
    const last = unstaged.filter(({ job }) => job.done === 'last');
    const between = unstaged.filter(({ job }) => job.done === undefined);
    const firsts = first.map((planned) => this.drafts.job(planned, planned.line.title, [], lengthOf(planned), 'outside bay'));
    const known = this.stage(staged, work.staged?.ways ?? [], firsts);
    this.decided = answer === undefined ? known : [this.drafts.wait('answer', 'The customer’s answer', answer, known, answer.at)];

    for (const way of work.ways) if (!this.openedBefore.has(way)) this.open(way, this.decided);
    const base = this.gotAt();
    for (const planned of between) this.split(planned, work);
    const apart = this.pieces.filter(({ first: start, last: end }) => start !== end).map(({ first: start }) => start);
    const found = [...new Set([...base, ...apart])];
    for (const one of turned) {
      for (const way of one.ways) this.open(way, found);
      for (const planned of one.jobs) if (planned.job.done !== 'last') this.split(planned, one);
    }

    const all = [work, ...turned];
    const lasts = [...last, ...turned.flatMap((one) => one.jobs.filter(({ job }) => job.done === 'last'))];
    if (this.following === 'after') this.late = lateOutside(all, lasts);
    for (const one of all) this.goods(one, one === work ? this.decided : found, base);
    this.followNames(all.flatMap((one) => one.jobs), work);
    for (const one of all) this.waitForLoose(one);

    const closed = all.flatMap((one) => one.ways.filter((way) => !leftOpen(way, one)).flatMap((way) => this.close(way)));
    const ends = [...firsts, ...(work.staged === undefined ? [] : this.decided), ...this.pieces.map((piece) => piece.last), ...closed];
    for (const planned of lasts) this.drafts.job(planned, planned.line.title, [...ends, ...this.used(planned.job)], lengthOf(planned));
    this.followNames(lasts, work);
    for (const part of partsOf(work)) this.assemble(part, base);
    return this.drafts.tasks;
  }

  /** What stages open and do, before the decision; ends with what the decision waits for. */
  private stage(jobs: readonly PlannedJob[], ways: readonly Access[], firsts: readonly number[]): readonly number[] {
    this.decided = firsts;
    for (const way of ways) this.open(way, firsts);
    this.openedBefore = new Set(ways);
    const base = this.gotAt();
    const work: PlannedWork = { jobs, ways: [], parts: jobs.flatMap(({ job }) => job.parts), sublets: jobs.flatMap(({ job }) => job.sublets) };
    for (const planned of jobs) this.split(planned, work);
    this.goods(work, firsts, base);
    return [...firsts, ...base, ...this.pieces.map(({ last }) => last)];
  }

  /** What must have ended for the engine to be got at. A way in that the work opens waits for the decision itself. */
  private gotAt(): readonly number[] {
    const opened = [...this.opened.values()].flat();
    return opened.length === 0 || this.openedBefore.size > 0 ? [...opened, ...this.decided] : opened;
  }

  /** What opens a way in of the work: all of them are opened before anything is done in there. */
  private openerOf(way: Access): readonly number[] {
    return this.opened.get(way) as readonly number[];
  }

  private arrival(kind: 'part' | 'tool', thing: Part | Tool, from: readonly number[]): readonly number[] {
    if (thing.arrives === undefined || ('owned' in thing && thing.owned)) return [];
    const known = this.arrivals.get(thing);
    if (known !== undefined) return [known];
    const made = this.drafts.wait(kind, `${thing.title} arrives`, thing.arrives, from, thing.arrives.at);
    this.arrivals.set(thing, made);
    return [made];
  }

  private open(way: Access, from: readonly number[]): void {
    const after = [...from, ...way.tools.flatMap((tool) => this.arrival('tool', tool, this.decided))];
    if (way.remove === undefined) return void this.opened.set(way, after);
    const title = `${way.title}: remove`;
    const made = this.drafts.add({ title, kind: 'remove', length: inHours(title, way.remove), after, at: way.remove.at });
    this.opened.set(way, [made]);
  }

  /** A job, in two pieces where it says when things are apart. */
  private split(planned: PlannedJob, work: PlannedWork): void {
    const { job, line, mode } = planned;
    const after = this.openFor(mode);
    if (after.length === 0 || this.openedBefore.size > 0) after.push(...this.decided);
    for (const tool of job.tools) after.push(...this.arrival('tool', tool, this.decided));
    const hours = lengthOf(planned);
    if (job.apart === undefined) {
      const made = this.drafts.job(planned, line.title, after, hours);
      this.pieces.push({ planned, of: work, first: made, last: made });
      return;
    }
    const apart = inHours(`${line.title}: until things are apart`, job.apart);
    const first = this.drafts.job(planned, `${line.title}: apart`, after, least(`${line.title}: apart`, [apart, hours]));
    const last = this.drafts.job(planned, `${line.title}: the rest`, [first], remainder(`${line.title}: the rest`, 'hours', [hours, apart]));
    this.pieces.push({ planned, of: work, first, last });
  }

  /** What opens the ways in that a job takes. */
  private openFor({ with: takes }: Mode): number[] {
    const found: number[] = [];
    if (takes.length === 0) return found;
    for (const [way, open] of this.opened) if (takes.some((one) => one === way || way.includes.includes(one))) found.push(...open);
    return found;
  }

  /** Parts and outside work: those of the work, and what ways in bring along. */
  private goods(work: PlannedWork, ordered: readonly number[], base: readonly number[]): void {
    const own = this.pieces.filter((piece) => piece.of === work);
    for (const part of partsOf(work)) this.arrival('part', part, ordered);
    for (const sublet of subletsOf(work)) {
      if (this.away.has(sublet) || (sublet.backIn === undefined && sublet.after.length === 0)) continue;
      const by = own.filter(({ planned }) => planned.job.sublets.includes(sublet));
      const apart = by.filter(({ first, last }) => first !== last).map(({ first }) => first);
      const way = work.ways.find((one) => one.sublets.includes(sublet));
      const from = way === undefined ? [...base, ...ordered] : [...this.openerOf(way), ...(this.openedBefore.has(way) ? this.decided : [])];
      const after = apart.length > 0 ? apart : from;
      const title = `${sublet.title}: away`;
      const made = sublet.backIn === undefined
        ? this.drafts.add({ title, kind: 'outside', length: constant(title, 'days', zero), wait: 'd', after, at: sublet.at })
        : this.drafts.wait('outside', title, sublet.backIn, after, sublet.backIn.at);
      this.away.set(sublet, made);
    }
    for (const { planned, last } of own) this.drafts.link(last, this.used(planned.job));
  }

  /** The waits of what a job uses. */
  private used(job: Labour): number[] {
    const waits: number[] = [];
    for (const part of job.parts) {
      const arrival = this.arrivals.get(part);
      if (arrival !== undefined) waits.push(arrival);
    }
    for (const sublet of job.sublets) {
      const away = this.away.get(sublet);
      if (away !== undefined) waits.push(away);
    }
    return waits;
  }

  /** What `after` says, for the work and outside work that the option has. */
  private followNames(jobs: readonly PlannedJob[], work: PlannedWork): void {
    if (this.following === 'no after' || (jobs.every(({ job }) => job.after.length === 0) && [...this.away.keys()].every(({ after }) => after.length === 0))) return;
    const pieces = new Map(this.pieces.toReversed().map((one) => [one.planned, one]));
    this.piecesByName = new Map(this.pieces.toReversed().map((one) => [one.planned.job.name, one]));
    for (const planned of jobs) {
      if (planned.job.after.length === 0) continue;
      const piece = pieces.get(planned);
      const task = piece?.first ?? this.drafts.madeFrom(planned.line.at);
      if (task >= 0) this.drafts.link(task, planned.job.after.flatMap((name) => this.named(name, undefined, work)));
    }
    for (const [sublet, task] of this.away) this.drafts.link(task, sublet.after.flatMap((name) => this.named(name, sublet, work)));
  }

  /** The task that ends with what is named. Outside work that a job sends away leaves when that job's things are apart. */
  private named({ name }: Name, sublet: Sublet | undefined, work: PlannedWork): readonly number[] {
    const piece = this.piecesByName.get(name);
    if (piece !== undefined) return [sublet !== undefined && piece.planned.job.sublets.includes(sublet) ? piece.first : piece.last];
    for (const [other, task] of this.away) if (other.name === name) return [task];
    for (const [thing, task] of this.arrivals) if ((thing as Part | Tool).name === name && !('owned' in thing)) return [task];
    const firstOrLast = work.jobs.find(({ job }) => job.name === name);
    const at = firstOrLast === undefined ? -1 : this.drafts.madeFrom(firstOrLast.line.at);
    return at < 0 ? [] : [at];
  }

  /** Parts and outside work that no job uses hold up every job, but for those that come before them. */
  private waitForLoose(work: PlannedWork): void {
    const used = new Set<Part | Sublet>();
    const use = ({ parts, sublets }: Labour) => {
      for (const part of parts) used.add(part);
      for (const sublet of sublets) used.add(sublet);
    };
    for (const { planned } of this.pieces) use(planned.job);
    for (const { job } of work.jobs) if (job.done === 'last') use(job);
    for (const part of work.parts) if (!used.has(part)) this.holdUp(part, this.arrivals.get(part));
    for (const sublet of work.sublets) if (!used.has(sublet) && !this.late.has(sublet)) this.holdUp(sublet, this.away.get(sublet));
  }

  private holdUp(thing: Part | Sublet, task: number | undefined): void {
    if (task === undefined) return;
    const before = this.drafts.before(task);
    const held = this.pieces.flatMap(({ last }) => (before.has(last) ? [] : [last]));
    for (const last of held) this.drafts.link(last, [task]);
    // Everything waits for an engine that goes in, and rightly so.
    if (held.length > 1 && !ENGINES.some((one) => topicsOf(thing).has(one))) this.drafts.holdsAll(task);
  }

  private close(way: Access): readonly number[] {
    const inside = this.pieces.filter(({ planned }) => planned.mode.with.some((one) => one === way || way.includes.includes(one))).map(({ last }) => last);
    const goods = [...way.parts.flatMap((part) => this.arrivals.get(part) ?? []), ...way.sublets.flatMap((sublet) => (this.late.has(sublet) ? [] : (this.away.get(sublet) ?? [])))];
    const others = inside.length > 0 ? [] : [...this.arrivals.values(), ...[...this.away].flatMap(([sublet, task]) => (this.late.has(sublet) ? [] : [task]))].filter((task) => this.drafts.kindOf(task) !== 'tool');
    const after = [...this.openerOf(way), ...(this.openedBefore.has(way) ? this.decided : []), ...inside, ...goods, ...others];
    if (way.refit === undefined) return after;
    const title = `${way.title}: refit`;
    return [this.drafts.add({ title, kind: 'refit', length: inHours(title, way.refit), after, at: way.refit.at })];
  }

  private assemble(part: Part, base: readonly number[]): void {
    const { core } = part;
    if (core?.assemble === undefined || core.charge === undefined || part.condition === 'customer-supplied') return;
    const title = assembleTitle(part);
    this.drafts.add({ title, kind: 'core', length: inHours(title, core.assemble), after: base, counts: false, inBay: false, at: core.assemble.at });
  }
}

/** How long a job takes as it is planned. */
export function lengthOf({ job, line }: PlannedJob): Figure {
  return line.hours ?? constant(`${job.title}, hours`, 'hours', zero);
}
