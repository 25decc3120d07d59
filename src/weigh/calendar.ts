import type { Shop } from '../estimate/index.js';

/** A day as a count of days since 1970-01-01, without time or zone. */
export type Day = number;

const MS_PER_DAY = 86_400_000;

export function dayOf(iso: string): Day {
  return Date.UTC(Number(iso.slice(0, 4)), Number(iso.slice(5, 7)) - 1, Number(iso.slice(8, 10))) / MS_PER_DAY;
}

export function isoOf(day: Day): string {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
}

/** 0 is Sunday. 1970-01-01 was a Thursday. */
export function weekdayOf(day: Day): number {
  return (((day + 4) % 7) + 7) % 7;
}

/** The days on which a shop works. */
export type WorkingCalendar = Pick<Shop, 'closedWeekdays' | 'closedDates'>;

export function isOpen(day: Day, calendar: WorkingCalendar): boolean {
  return !calendar.closedWeekdays.has(weekdayOf(day)) && !calendar.closedDates.has(isoOf(day));
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

/** A day some calendar months later, or the last of that month where it has no such day. */
export function monthsAfter(day: Day, months: number): Day {
  const date = new Date(day * MS_PER_DAY);
  const month = date.getUTCMonth() + months;
  const lastOfMonth = new Date(Date.UTC(date.getUTCFullYear(), month + 1, 0)).getUTCDate();
  return Date.UTC(date.getUTCFullYear(), month, Math.min(date.getUTCDate(), lastOfMonth)) / MS_PER_DAY;
}
