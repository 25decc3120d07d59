import type { Span } from '../language/index.js';
import type { Estimate, Option } from '../estimate/index.js';
import { Decimal } from '../vocabulary/index.js';
import { dayOf, isoOf, type Day } from './calendar.js';
import { found, type Figure, type Points } from './figure.js';
import { lazily } from './lazily.js';
import type { Plan } from './plan.js';
import type { PlannedWork } from './planned-work.js';
import { workdayOf } from './price-labour.js';
import { compileOrder, type BayPlan } from './schedule/index.js';
import { scheduledAgain, type Scheduled } from './scheduled.js';
import { slackOf, type Slack } from './slack.js';
import type { Task } from './task.js';
import { dayNumber, daysFilled, durationOf, planTasks, shopTimeOf, type ShopTime } from './timetable.js';
import { workingDaysFrom, type WorkingDays } from './working-days.js';

/** A task on the calendar. Hours are counted from the start, in working time: nights and closed days do not exist. */
export interface TimedTask {
  readonly task: Task;
  readonly start: number;
  readonly end: number;
  /** From 1; undefined for waits. */
  readonly technician: number | undefined;
  /** How much later it could start without moving the finish, the technicians staying with their work. */
  readonly slack: number;
  readonly critical: boolean;
  /** YYYY-MM-DD; undefined without a date to start from. */
  readonly from: string | undefined;
  readonly to: string | undefined;
}

/** When the three-point lengths say it is finished, by the normal approximation along the critical path. */
export interface FinishDays {
  readonly chance: number;
  readonly days: number;
  readonly date: string | undefined;
}

/** The bay plan of an option: who does what when, and when the vehicle is ready. */
export interface Ready {
  /** Working days from the start to the end, the first and the last counted; none where nothing is done. */
  readonly days: Figure;
  /** Of the time in the bay, working days in which nobody works on it. */
  readonly waiting: Figure;
  /** Working days on which the bay is blocked, from the first work after the customer's answer, or in a stage before it, to the end. */
  readonly bay: Figure;
  /** YYYY-MM-DD; undefined where the estimate gives no day to start from. */
  readonly date: string | undefined;
  readonly latest: string | undefined;
  readonly tasks: readonly TimedTask[];
  readonly technicians: number;
  readonly hoursPerDay: number;
  /** Hours of working time to the end. */
  readonly finish: number;
  /** Whether no plan is ready earlier; otherwise by how many hours one could be, at most. */
  readonly proven: boolean;
  readonly gap: number;
  readonly byChance: readonly FinishDays[];
  /** YYYY-MM-DD on which a part is ordered that arrives as written there; undefined without a date to start from. */
  readonly orderedOn: (arrives: Span) => string | undefined;
  /** Whether several jobs wait for what arrives, or is away, as written there, since none says that it uses it. */
  readonly holdsAll: (wait: Span) => boolean;
  /** The tasks that wait for each other where `after` goes round in a circle; it is then left out. */
  readonly circle: readonly string[] | undefined;
}

export function readyOf(plan: Plan, { record, parts, sublets, staged }: Pick<Option, 'record' | 'parts' | 'sublets' | 'staged'>, estimate: Estimate): Ready {
  const work: PlannedWork = { jobs: plan.jobs, ways: plan.paid, parts, sublets, staged };
  const time = shopTimeOf(estimate, startOf(estimate));
  return new BayReady(scheduledAgain(record, work, estimate, time), estimate, time);
}

/** Worked out as far as somebody asks: while an estimate is typed, that is the day on which it is ready at most. */
class BayReady implements Ready {
  readonly technicians: number;
  readonly hoursPerDay: number;
  readonly finish: number;
  readonly proven: boolean;
  readonly gap: number;
  readonly circle: readonly string[] | undefined;
  private readonly network: () => Slack;
  private readonly rows: () => readonly Row[];
  private readonly points: () => { readonly [point in keyof Points]: number };
  private readonly made: () => Pick<Ready, 'days' | 'bay' | 'waiting'>;
  private readonly dates: WorkingDays | undefined;

  readonly orderedOn: Ready['orderedOn'];
  readonly holdsAll: Ready['holdsAll'];

  constructor({ tasks, planned, circle }: Scheduled, estimate: Estimate, private readonly time: ShopTime) {
    this.technicians = time.technicians;
    this.hoursPerDay = time.hoursPerDay;
    this.finish = planned.makespan;
    this.proven = planned.proven;
    this.gap = planned.gap;
    this.circle = circle;
    this.dates = time.start === undefined ? undefined : workingDaysFrom(time.start, time.shop);
    this.orderedOn = (arrives) => {
      const place = tasks.findIndex(({ at }) => at === arrives);
      return place < 0 ? undefined : this.dateOf(dayNumber(planned.startOf(place), time));
    };
    const holding = lazily(() => new Set(tasks.filter((task) => task.holdsAll).map(({ at }) => at)));
    this.holdsAll = (wait) => holding().has(wait);
    this.network = lazily(() => slackOf(tasks, planned, time));
    this.points = lazily(() => atPoints(tasks, planned, time));
    this.rows = lazily(() => tasks.map((task, i) => new Row(task, planned.tasks[i] as BayPlan['tasks'][number], i, this.dateOf, time, this.network)));
    this.made = lazily(() => this.inDays(estimate));
  }

  get tasks(): readonly TimedTask[] {
    return this.rows();
  }

  get date(): string | undefined {
    return this.lastDay(this.finish);
  }

  get latest(): string | undefined {
    return this.lastDay(this.points().high);
  }

  get days(): Figure {
    return this.made().days;
  }

  get bay(): Figure {
    return this.made().bay;
  }

  get waiting(): Figure {
    return this.made().waiting;
  }

  get byChance(): readonly FinishDays[] {
    return this.network().finishes.map(({ chance, hours }) => ({ chance, days: daysFilled(hours, this.time), date: this.lastDay(hours) }));
  }

  private readonly dateOf = (number: number) => (this.dates === undefined ? undefined : isoOf(this.dates.day(number)));

  private lastDay(hours: number): string | undefined {
    return this.dateOf(Math.max(0, daysFilled(hours, this.time) - 1));
  }

  private inDays(estimate: Estimate): Pick<Ready, 'days' | 'bay' | 'waiting'> {
    const { time } = this;
    const finish = this.points();
    const days = (hours: number) => daysFilled(hours, time);
    const critical = this.rows().filter((row) => row.critical);
    const from = [...critical.map(({ task }) => task.length), workdayOf(estimate.shop)];
    const { bay, waiting } = inBay(this.rows(), this.finish, time);
    const ranged = days(finish.low) !== days(finish.likely) || days(finish.high) !== days(finish.likely);
    const total = found('Working days until it is ready', 'days', new Decimal(days(finish.likely)), howLong(critical, time), from);
    return {
      days: ranged ? { ...total, low: new Decimal(days(finish.low)), high: new Decimal(days(finish.high)), ranged } : total,
      bay: found('Working days in the bay', 'days', new Decimal(bay), `From the first work ${estimate.stages.length === 0 ? 'after the customer’s answer' : 'on the vehicle'} to the end; every day on which the bay is blocked.`, [total]),
      waiting: found('Days of waiting', 'days', new Decimal(waiting).toDecimalPlaces(2), 'Time in the bay in which nobody works on it, in working days.', [total]),
    };
  }
}

class Row implements TimedTask {
  readonly start: number;
  readonly end: number;
  readonly technician: number | undefined;

  constructor(
    readonly task: Task,
    { start, end, technician }: BayPlan['tasks'][number],
    private readonly place: number,
    private readonly dateOf: (number: number) => string | undefined,
    private readonly time: ShopTime,
    private readonly network: () => Slack,
  ) {
    this.start = start;
    this.end = end;
    this.technician = technician === undefined ? undefined : technician + 1;
  }

  get slack(): number {
    return this.task.counts ? (this.network().times?.activities[this.place]?.totalSlack ?? 0) : 0;
  }

  get critical(): boolean {
    return this.task.counts && this.end > this.start && this.network().times?.activities[this.place]?.critical === true;
  }

  get from(): string | undefined {
    return this.dateOf(dayNumber(this.start, this.time));
  }

  get to(): string | undefined {
    return this.dateOf(Math.max(dayNumber(this.start, this.time), daysFilled(this.end, this.time) - 1));
  }
}

function howLong(critical: readonly TimedTask[], { technicians }: ShopTime): string {
  const hands = technicians === 1 ? 'one technician' : `${technicians} technicians`;
  if (critical.length === 0) return 'There is nothing to do or to wait for.';
  return `The plan of the bay with ${hands}; these pieces, one after the other, decide the day. Whole days, rounded up.`;
}

/** The finish if everything takes its low, likely and high length, in the order of the likely plan. */
function atPoints(tasks: readonly Task[], planned: BayPlan, time: ShopTime): { readonly [point in keyof Points]: number } {
  const likely = planned.makespan;
  if (!tasks.some(({ length }) => length.ranged)) return { low: likely, likely, high: likely };
  const run = compileOrder(planTasks(tasks, 'likely', time), planned.order, time.technicians);
  const at = (point: keyof Points) => run(Float64Array.from(tasks, (task) => durationOf(task, point, time)));
  return { low: Math.min(likely, at('low')), likely, high: Math.max(likely, at('high')) };
}

/** The first work in the bay to the end, and how much of that nobody works. */
function inBay(rows: readonly TimedTask[], end: number, time: ShopTime): { readonly bay: number; readonly waiting: number } {
  const work = rows.filter(({ task, start, end: to }) => task.inBay && to > start).sort((a, b) => a.start - b.start);
  const [first] = work;
  if (first === undefined) return { bay: 0, waiting: 0 };
  let idle = 0;
  let busyTo = first.start;
  for (const { start, end: to } of work) {
    if (start > busyTo) idle += start - busyTo;
    busyTo = Math.max(busyTo, to);
  }
  return { bay: daysFilled(end, time) - dayNumber(first.start, time), waiting: (idle + Math.max(0, end - busyTo)) / time.hoursPerDay };
}

/** The day the work can start: as written, or else the day the estimate was written. */
export function startOf(estimate: Pick<Estimate, 'header'>): Day | undefined {
  const iso = estimate.header?.start ?? estimate.header?.written;
  return iso === undefined ? undefined : dayOf(iso);
}
