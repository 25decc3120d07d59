import type { Amount } from '../vocabulary/index.js';
import { dayWhenPassed, isOpen, workingDayAfter, type Day, type WorkingCalendar } from './calendar.js';
import { keeper } from './keep.js';

/** How far ahead days are counted; a shop that is closed for longer has closed for good. */
const FARTHEST = 20_000;
/** So many months, or weeks, a wait lasts at most. */
const MOST_MONTHS = 1200;

/** Working days counted from a first day on, looked up and not counted anew. The first working day is number 0. */
export interface WorkingDays {
  /** The day of a number; the last one known where the calendar ends before. */
  readonly day: (number: number) => Day;
  /** How many working days lie before a day. */
  readonly before: (day: Day) => number;
}

const keep = keeper<WorkingCalendar, WorkingDays>();

export function workingDaysFrom(first: Day, calendar: WorkingCalendar): WorkingDays {
  return keep(calendar, [first], () => countedFrom(first, calendar));
}

function countedFrom(first: Day, calendar: WorkingCalendar): WorkingDays {
  const open: Day[] = [];
  const before: number[] = [];
  const countTo = (day: Day) => {
    for (let next = first + before.length; next <= day; next++) {
      before.push(open.length);
      if (isOpen(next, calendar)) open.push(next);
    }
  };
  return {
    day(number) {
      const wanted = Math.max(0, Math.floor(number));
      while (open.length <= wanted && before.length < FARTHEST) countTo(first + before.length + 31);
      return open[Math.min(wanted, open.length - 1)] ?? first;
    },
    before(day) {
      if (day <= first) return 0;
      countTo(Math.min(day, first + FARTHEST));
      return before[Math.min(day - first, before.length - 1)] ?? 0;
    },
  };
}

/** The unit of a wait: d is a working day, wk and mo run by the calendar. */
export type WaitUnit = 'd' | 'wk' | 'mo';

/**
 * The day on which a wait ends that begins on a day. What comes in the middle of a day is there on the next, so it is
 * rounded up; undefined where nothing is open so long.
 */
export function waitEndsOn(from: Day, count: number, unit: WaitUnit, calendar: WorkingCalendar): Day | undefined {
  return unit === 'd' ? workingDayAfter(from, Math.ceil(Math.min(count, FARTHEST)), calendar) : calendarWaitEndsOn(from, count, unit);
}

/** The same for what runs by the calendar: weeks of seven days, calendar months, and of a part of one as many of its days. */
export function calendarWaitEndsOn(from: Day, count: number, unit: 'wk' | 'mo'): Day {
  const most = Math.min(count, MOST_MONTHS);
  return unit === 'wk' ? from + Math.ceil(most * 7) : dayWhenPassed(from, most);
}

/** The unit that a wait is written in; days where it has none. */
export function waitUnitOf({ unit }: Pick<Amount, 'unit'>): WaitUnit {
  return unit?.word === 'wk' || unit?.word === 'mo' ? unit.word : 'd';
}
