import { isOpen, monthsAfter, type Day, type WorkingCalendar } from './calendar.js';
import { keeper } from './keep.js';

/** How far ahead days are counted; a shop that is closed for longer has closed for good. */
const FARTHEST = 20_000;

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

/** The day on which a wait by the calendar ends: weeks of seven days, calendar months. */
export function waitEndsOn(start: Day, value: number, unit: 'wk' | 'mo'): Day {
  const most = Math.min(value, 1200);
  return unit === 'wk' ? start + Math.ceil(Math.min(most * 7, FARTHEST)) : monthsAfter(start, Math.ceil(most));
}
