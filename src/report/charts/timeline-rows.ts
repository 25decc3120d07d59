import type { Estimate } from '../../estimate/index.js';
import { calendar, type Weighed } from '../../weigh/index.js';

/** One task of the bay plan, in hours of working time from the start. */
export interface TimelineRow {
  readonly title: string;
  readonly kind: 'work' | 'wait';
  readonly start: number;
  readonly end: number;
  readonly critical: boolean;
  /** Its first and last day, YYYY-MM-DD. */
  readonly from: string | undefined;
  readonly to: string | undefined;
}

/** The bay plan of one option. */
export interface Timeline {
  readonly title: string;
  readonly rows: readonly TimelineRow[];
  /** The working days from the first on, as days of the calendar; undefined without a date to start from. */
  readonly dates: readonly number[] | undefined;
  readonly hoursPerDay: number;
  readonly finish: number;
  /** YYYY-MM-DD. */
  readonly ready: string | undefined;
}

/** More working days than this are drawn without dates. */
const MOST_DAYS = 2000;

/** The bay plan of an option in the order in which things begin. What takes no time is not drawn. */
export function timelineOf({ option, ready }: Weighed, { header, shop }: Pick<Estimate, 'header' | 'shop'>): Timeline {
  const rows = ready.tasks.map((row, i) => ({ row, i })).filter(({ row }) => row.end > row.start)
    .sort((a, b) => a.row.start - b.row.start || a.row.end - b.row.end || a.i - b.i)
    .map(({ row: { task, start, end, critical, from, to } }): TimelineRow => ({ title: task.title, kind: task.wait === undefined ? 'work' : 'wait', start, end, critical, from, to }));
  const first = header?.start ?? header?.written;
  const count = Math.ceil(rows.reduce((most, { end }) => Math.max(most, end), ready.finish) / ready.hoursPerDay) + 1;
  return { title: option.title, rows, dates: first === undefined || count > MOST_DAYS ? undefined : workingDays(calendar.dayOf(first), count, shop), hoursPerDay: ready.hoursPerDay, finish: ready.finish, ready: ready.date };
}

function workingDays(first: number, count: number, shop: Pick<Estimate['shop'], 'closedWeekdays' | 'closedDates'>): readonly number[] | undefined {
  const days: number[] = [];
  let from = first;
  while (days.length < count) {
    const day = calendar.workingDayAfter(from, 0, shop);
    if (day === undefined) return undefined;
    days.push(day);
    from = day + 1;
  }
  return days;
}
