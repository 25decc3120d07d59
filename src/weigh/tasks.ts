import type { Span } from '../language/index.js';
import { assembleTitle, type Access, type Estimate, type Labour, type Part, type Staged, type Sublet, type Tool } from '../estimate/index.js';
import type { Amount, Name } from '../vocabulary/index.js';
import { constant, given, least, remainder, type Figure } from './figure.js';
import type { PlannedJob } from './plan.js';
import { inHours } from './price-labour.js';
import { zero } from '../vocabulary/index.js';

/** What a piece of the calendar is. */
export type TaskKind = 'answer' | 'remove' | 'job' | 'refit' | 'part' | 'tool' | 'outside' | 'core';

/** One piece of the way to a running car. */
export interface Task {
  readonly id: string;
  readonly title: string;
  readonly kind: TaskKind;
  /** Hours of work; for a wait its days, weeks or months, as written. */
  readonly length: Figure;
  /** The unit of a wait: d is a working day, wk and mo run by the calendar. */
  readonly wait: 'd' | 'wk' | 'mo' | undefined;
  /** Indexes of the tasks that it waits for. */
  readonly after: readonly number[];
  /** False for what may go on after the vehicle is ready. */
  readonly counts: boolean;
  /** Whether the vehicle stands in the bay for it. */
  readonly inBay: boolean;
  readonly at: Span;
}

/** What an option does, in one of its plans. */
export interface PlannedWork {
  readonly jobs: readonly PlannedJob[];
  readonly ways: readonly Access[];
  readonly parts: readonly Part[];
  readonly sublets: readonly Sublet[];
  /** What of it comes before the decision. */
  readonly staged?: Staged | undefined;
}

/** Whether `after` is followed; it is not where it goes round in a circle. */
export type Following = 'after' | 'no after';

/**
 * The tasks of an option. First what is done before the customer decides, then what stages open and do, then the answer;
 * then parts and tools are ordered and the engine is got at. Work starts when its way in is open and its tools, parts and outside work are
 * there; where it says how far things come apart, that first part waits for no parts, and outside work leaves after
 * it. Parts and outside work that no job uses are waited for by every job. A way in is closed when all the work that
 * takes it is done, and what is done last comes after all of that. Putting an old core together never holds up the
 * vehicle.
 *
 * @param turned what has turned up: chances that happen, each with the ways in that it takes beyond the option's own.
 * They are found when the engine is got at and things are apart, and their parts are ordered then.
 */
export function tasksOf(work: PlannedWork, turned: readonly PlannedWork[], estimate: Pick<Estimate, 'header'>, following: Following): Task[] {
  return new TaskList(following).build(work, turned, estimate.header?.answer);
}

interface Draft extends Omit<Task, 'after'> {
  after: number[];
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
  private readonly tasks: Draft[] = [];
  private readonly arrivals = new Map<object, number>();
  private readonly away = new Map<Sublet, number>();
  private readonly opened = new Map<Access, readonly number[]>();
  private readonly pieces: Piece[] = [];
  /** The first piece of each name. */
  private piecesByName: ReadonlyMap<string | undefined, Piece> = new Map();
  /** Outside work that comes after what is done last: nothing else waits for it. */
  private readonly late = new Set<Sublet>();
  /** What everything but the first jobs and stages waits for. */
  private decided: readonly number[] = [];
  /** Ways in that stages opened: what needs them later waits for the decision too. */
  private openedBefore: ReadonlySet<Access> = new Set();

  constructor(private readonly following: Following) {}

  build(work: PlannedWork, turned: readonly PlannedWork[], answer: Amount | undefined): Task[] {
    // What is done first comes before a stage that names it, too.
    const staged = work.jobs.filter(({ job }) => job.done !== 'first' && work.staged?.labour.includes(job) === true);
    const unstaged = work.jobs.filter((planned) => !staged.includes(planned));
    const first = unstaged.filter(({ job }) => job.done === 'first');
    const last = unstaged.filter(({ job }) => job.done === 'last');
    const between = unstaged.filter(({ job }) => job.done === undefined);
    const firsts = first.map((planned) => this.job(planned, planned.line.title, [], lengthOf(planned), 'outside bay'));
    const known = this.stage(staged, work.staged?.ways ?? [], firsts);
    this.decided = answer === undefined ? known : [this.wait('answer', 'The customer’s answer', answer, known, answer.at)];

    for (const way of work.ways) if (!this.openedBefore.has(way)) this.open(way, this.decided);
    const base = [...[...this.opened.values()].flat(), ...(this.openedBefore.size > 0 ? this.decided : [])];
    for (const planned of between) this.split(planned, work);
    const apart = this.pieces.filter(({ first: start, last: end }) => start !== end).map(({ first: start }) => start);
    const found = [...new Set([...(base.length > 0 ? base : this.decided), ...apart])];
    for (const one of turned) {
      for (const way of one.ways) this.open(way, found);
      for (const planned of one.jobs) if (planned.job.done !== 'last') this.split(planned, one);
    }

    const all = [work, ...turned];
    this.findLate(all, [...last, ...turned.flatMap((one) => one.jobs.filter(({ job }) => job.done === 'last'))]);
    for (const one of all) this.goods(one, one === work ? this.decided : found, base);
    this.followNames(all.flatMap((one) => one.jobs), work);
    for (const one of all) this.waitForLoose(one, base);

    const closed = all.flatMap((one) => one.ways.filter((way) => !leftOpen(way, one)).flatMap((way) => this.close(way)));
    const ends = [...firsts, ...(work.staged === undefined ? [] : this.decided), ...this.pieces.map((piece) => piece.last), ...closed];
    const lasts = [...last, ...turned.flatMap((one) => one.jobs.filter(({ job }) => job.done === 'last'))];
    for (const planned of lasts) this.job(planned, planned.line.title, [...ends, ...this.used(planned.job)], lengthOf(planned), 'in bay');
    this.followNames(lasts, work);
    for (const part of partsOf(work)) this.assemble(part, base);
    return this.tasks;
  }

  /** What stages open and do, before the decision; ends with what the decision waits for. */
  private stage(jobs: readonly PlannedJob[], ways: readonly Access[], firsts: readonly number[]): readonly number[] {
    this.decided = firsts;
    for (const way of ways) this.open(way, firsts);
    this.openedBefore = new Set(ways);
    const base = [...this.opened.values()].flat();
    const work: PlannedWork = { jobs, ways: [], parts: jobs.flatMap(({ job }) => job.parts), sublets: jobs.flatMap(({ job }) => job.sublets) };
    for (const planned of jobs) this.split(planned, work);
    this.goods(work, firsts, base);
    return [...firsts, ...base, ...this.pieces.map(({ last }) => last)];
  }

  private findLate(all: readonly PlannedWork[], last: readonly PlannedJob[]): void {
    if (this.following === 'no after') return;
    const names = new Set(last.flatMap(({ job }) => job.name ?? []));
    const sublets = all.flatMap((one) => [...one.sublets, ...one.ways.flatMap((way) => way.sublets)]);
    for (let before = -1; before < this.late.size; ) {
      before = this.late.size;
      for (const sublet of sublets) {
        if (!sublet.after.some(({ name }) => names.has(name))) continue;
        this.late.add(sublet);
        if (sublet.name !== undefined) names.add(sublet.name);
      }
    }
  }

  private add(task: Draft): number {
    this.tasks.push({ ...task, id: `${this.tasks.length + 1} ${task.title}`, after: [...new Set(task.after)] });
    return this.tasks.length - 1;
  }

  private job(planned: PlannedJob, title: string, after: readonly number[], length: Figure, where: 'in bay' | 'outside bay'): number {
    return this.add({ id: '', title, kind: 'job', length, wait: undefined, after: [...after], counts: true, inBay: where === 'in bay', at: planned.line.at });
  }

  private wait(kind: TaskKind, title: string, amount: Amount, after: readonly number[], at: Span): number {
    const unit = amount.unit?.word;
    return this.add({ id: '', title, kind, length: given(title, 'days', amount), wait: unit === 'wk' || unit === 'mo' ? unit : 'd', after: [...after], counts: true, inBay: false, at });
  }

  private arrival(kind: 'part' | 'tool', thing: Part | Tool, from: readonly number[]): readonly number[] {
    if (thing.arrives === undefined || ('owned' in thing && thing.owned)) return [];
    const known = this.arrivals.get(thing);
    if (known !== undefined) return [known];
    const made = this.wait(kind, `${thing.title} arrives`, thing.arrives, from, thing.arrives.at);
    this.arrivals.set(thing, made);
    return [made];
  }

  private open(way: Access, from: readonly number[]): void {
    const after = [...from, ...way.tools.flatMap((tool) => this.arrival('tool', tool, this.decided))];
    if (way.remove === undefined) return void this.opened.set(way, after);
    const title = `${way.title}: remove`;
    const made = this.add({ id: '', title, kind: 'remove', length: inHours(title, way.remove), wait: undefined, after, counts: true, inBay: true, at: way.remove.at });
    this.opened.set(way, [made]);
  }

  /** A job, in two pieces where it says when things are apart. */
  private split(planned: PlannedJob, work: PlannedWork): void {
    const { job, line, mode } = planned;
    const opened = [...this.opened].filter(([way]) => mode.with.some((one) => one === way || way.includes.includes(one))).flatMap(([, open]) => open);
    const after = [...(opened.length > 0 ? opened : this.decided), ...(this.openedBefore.size > 0 ? this.decided : []), ...job.tools.flatMap((tool) => this.arrival('tool', tool, this.decided))];
    const hours = lengthOf(planned);
    if (job.apart === undefined) {
      const made = this.job(planned, line.title, after, hours, 'in bay');
      this.pieces.push({ planned, of: work, first: made, last: made });
      return;
    }
    const apart = inHours(`${line.title}: until things are apart`, job.apart);
    const first = this.job(planned, `${line.title}: apart`, after, least(`${line.title}: apart`, [apart, hours]), 'in bay');
    const last = this.job(planned, `${line.title}: the rest`, [first], remainder(`${line.title}: the rest`, 'hours', [hours, apart]), 'in bay');
    this.pieces.push({ planned, of: work, first, last });
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
      const from = way === undefined ? [...(base.length > 0 ? base : this.decided), ...ordered] : [...(this.opened.get(way) ?? this.decided), ...(this.openedBefore.has(way) ? this.decided : [])];
      const after = apart.length > 0 ? apart : from;
      const title = `${sublet.title}: away`;
      const made = sublet.backIn === undefined
        ? this.add({ id: '', title, kind: 'outside', length: constant(title, 'days', zero), wait: 'd', after: [...after], counts: true, inBay: true, at: sublet.at })
        : this.wait('outside', title, sublet.backIn, after, sublet.backIn.at);
      this.away.set(sublet, made);
    }
    for (const { planned, last } of own) this.link(last, this.used(planned.job));
  }

  /** The waits of what a job uses. */
  private used(job: Labour): number[] {
    return [...job.parts.flatMap((part) => this.arrivals.get(part) ?? []), ...job.sublets.flatMap((sublet) => this.away.get(sublet) ?? [])];
  }

  private link(task: number, after: readonly number[]): void {
    const draft = this.tasks[task] as Draft;
    for (const one of after) if (one !== task && !draft.after.includes(one)) draft.after.push(one);
  }

  /** What `after` says, for the work and outside work that the option has. */
  private followNames(jobs: readonly PlannedJob[], work: PlannedWork): void {
    if (this.following === 'no after') return;
    const pieces = new Map(this.pieces.toReversed().map((one) => [one.planned, one]));
    this.piecesByName = new Map(this.pieces.toReversed().map((one) => [one.planned.job.name, one]));
    for (const planned of jobs) {
      if (planned.job.after.length === 0) continue;
      const piece = pieces.get(planned);
      const task = piece?.first ?? this.tasks.findIndex((one) => one.at === planned.line.at);
      if (task >= 0) this.link(task, planned.job.after.flatMap((name) => this.named(name, undefined, work)));
    }
    for (const [sublet, task] of this.away) this.link(task, sublet.after.flatMap((name) => this.named(name, sublet, work)));
  }

  /** The task that ends with what is named. Outside work that a job sends away leaves when that job's things are apart. */
  private named({ name }: Name, sublet: Sublet | undefined, work: PlannedWork): readonly number[] {
    const piece = this.piecesByName.get(name);
    if (piece !== undefined) return [sublet !== undefined && piece.planned.job.sublets.includes(sublet) ? piece.first : piece.last];
    for (const [other, task] of this.away) if (other.name === name) return [task];
    for (const [thing, task] of this.arrivals) if ((thing as Part | Tool).name === name && !('owned' in thing)) return [task];
    const firstOrLast = work.jobs.find(({ job }) => job.name === name);
    const at = firstOrLast === undefined ? -1 : this.tasks.findIndex((task) => task.kind === 'job' && task.at === firstOrLast.line.at);
    return at < 0 ? [] : [at];
  }

  /** Parts and outside work that no job uses hold up every job, but for those that come before them. */
  private waitForLoose(work: PlannedWork, base: readonly number[]): void {
    const jobs = [...this.pieces.map(({ planned }) => planned), ...work.jobs.filter(({ job }) => job.done === 'last')].map(({ job }) => job);
    const loose = [
      ...work.parts.filter((part) => !jobs.some((job) => job.parts.includes(part))).flatMap((part) => this.arrivals.get(part) ?? []),
      ...work.sublets.filter((sublet) => !this.late.has(sublet) && !jobs.some((job) => job.sublets.includes(sublet))).flatMap((sublet) => this.away.get(sublet) ?? []),
    ].filter((task) => !base.includes(task));
    for (const task of loose) {
      const before = this.before(task);
      for (const { last } of this.pieces) if (!before.has(last)) this.link(last, [task]);
    }
  }

  private before(task: number): ReadonlySet<number> {
    const seen = new Set<number>([task]);
    const visit = (one: number) => {
      for (const next of (this.tasks[one] as Draft).after) if (!seen.has(next)) {
        seen.add(next);
        visit(next);
      }
    };
    visit(task);
    return seen;
  }

  private close(way: Access): readonly number[] {
    const inside = this.pieces.filter(({ planned }) => planned.mode.with.some((one) => one === way || way.includes.includes(one))).map(({ last }) => last);
    const goods = [...way.parts.flatMap((part) => this.arrivals.get(part) ?? []), ...way.sublets.flatMap((sublet) => (this.late.has(sublet) ? [] : (this.away.get(sublet) ?? [])))];
    const others = inside.length > 0 ? [] : [...this.arrivals.values(), ...[...this.away].flatMap(([sublet, task]) => (this.late.has(sublet) ? [] : [task]))].filter((task) => (this.tasks[task] as Draft).kind !== 'tool');
    const after = [...(this.opened.get(way) ?? []), ...(this.openedBefore.has(way) ? this.decided : []), ...inside, ...goods, ...others];
    if (way.refit === undefined) return after;
    const title = `${way.title}: refit`;
    return [this.add({ id: '', title, kind: 'refit', length: inHours(title, way.refit), wait: undefined, after, counts: true, inBay: true, at: way.refit.at })];
  }

  private assemble(part: Part, base: readonly number[]): void {
    const { core } = part;
    if (core?.assemble === undefined || core.charge === undefined || part.condition === 'customer-supplied') return;
    const title = assembleTitle(part);
    this.add({ id: '', title, kind: 'core', length: inHours(title, core.assemble), wait: undefined, after: [...(base.length > 0 ? base : this.decided)], counts: false, inBay: false, at: core.assemble.at });
  }
}

/** A way in that a stage opened and nobody closes. */
function leftOpen(way: Access, { staged }: PlannedWork): boolean {
  return staged?.then === 'left open' && staged.ways.includes(way);
}

/** The parts of the work, and those of the ways in that are closed. */
function partsOf(work: PlannedWork): readonly Part[] {
  return [...work.parts, ...work.ways.flatMap((way) => (leftOpen(way, work) ? [] : way.parts))];
}

function subletsOf(work: PlannedWork): readonly Sublet[] {
  return [...work.sublets, ...work.ways.flatMap((way) => (leftOpen(way, work) ? [] : way.sublets))];
}

function lengthOf({ job, line }: PlannedJob): Figure {
  return line.hours ?? constant(`${job.title}, hours`, 'hours', zero);
}
