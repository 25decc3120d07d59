import { isoOf, type Day, type Shop } from '../estimate/index.js';

export { dayOf, dayWhenPassed, isoOf, lastDayWithin, monthsAfter, type Day } from '../estimate/index.js';

/** 0 is Sunday. 1970-01-01 was a Thursday. */
export function weekdayOf(day: Day): number {
  return (((day + 4) % 7) + 7) % 7;
}

/** The days on which a shop works. */
export type WorkingCalendar = Pick<Shop, 'closedWeekdays' | 'closedDates'>;

export function isOpen(day: Day, calendar: WorkingCalendar): boolean {
  return !calendar.closedWeekdays.has(weekdayOf(day)) && (calendar.closedDates.size === 0 || !calendar.closedDates.has(isoOf(day)));
}

/** Working days from one day to another, both counted. */
export function workingDaysBetween(first: Day, last: Day, calendar: WorkingCalendar): number {
  let count = 0;
  for (let day = first; day <= last; day++) if (isOpen(day, calendar)) count++;
  return count;
}

/** How far ahead a calendar is searched; a shop that is closed for longer has closed for good. */
const FARTHEST = 20_000;

/** The working day that is `count` working days after the first working day on or after `from`; 0 is that day itself. */
export function workingDayAfter(from: Day, count: number, calendar: WorkingCalendar): Day | undefined {
  let left = count;
  for (let day = from; day < from + FARTHEST; day++) {
    if (!isOpen(day, calendar)) continue;
    if (left <= 0) return day;
    left--;
  }
  return undefined;
}
