import type { Amount } from '../vocabulary/index.js';

/** A day as a count of days since 1970-01-01, without time or zone. */
export type Day = number;

const MS_PER_DAY = 86_400_000;

export function dayOf(iso: string): Day {
  return Date.UTC(Number(iso.slice(0, 4)), Number(iso.slice(5, 7)) - 1, Number(iso.slice(8, 10))) / MS_PER_DAY;
}

export function isoOf(day: Day): string {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
}

/** A day some calendar months later, or the last of that month where it has no such day. */
export function monthsAfter(day: Day, months: number): Day {
  const date = new Date(day * MS_PER_DAY);
  const month = date.getUTCMonth() + months;
  const lastOfMonth = new Date(Date.UTC(date.getUTCFullYear(), month + 1, 0)).getUTCDate();
  return Date.UTC(date.getUTCFullYear(), month, Math.min(date.getUTCDate(), lastOfMonth)) / MS_PER_DAY;
}

/** Whether a day (YYYY-MM-DD) is more than a year after another: jobs wait for parts and for money, but a wrong year is typed more often. */
export function isFarAfter(on: string, before: string): boolean {
  return dayOf(on) > monthsAfter(dayOf(before), 12);
}

/** A moment so many calendar months after a day, in days: a part of a month is that part of the days of the month it runs in. */
function monthsOn(day: Day, months: number): number {
  const whole = Math.floor(months);
  const begun = monthsAfter(day, whole);
  return whole === months ? begun : begun + (months - whole) * (monthsAfter(day, whole + 1) - begun);
}

/** Parts of a month that make whole days may miss them by the noise of binary numbers; a written part is no smaller than a millionth. */
const NOISE = 1e-7;

/** The last day that is still within so many calendar months from a day on: a day that has only begun is not. */
export function lastDayWithin(day: Day, months: number): Day {
  return Math.floor(monthsOn(day, months) + NOISE);
}

/** The first day on which so many calendar months have passed: a day that has begun is waited for to its end. */
export function dayWhenPassed(day: Day, months: number): Day {
  return Math.ceil(monthsOn(day, months) - NOISE);
}

/** An offer that holds for longer never runs out. */
const FARTHEST = 20_000;

/** The last day of an offer: so long, by the calendar, after the day it was made. */
export function lastDay(from: string, { likely, unit }: Amount): string {
  const start = dayOf(from);
  const count = Math.min(likely.toNumber(), FARTHEST);
  if (unit?.word === 'mo') return isoOf(lastDayWithin(start, Math.min(count, 1200)));
  return isoOf(start + Math.min(Math.floor(unit?.word === 'wk' ? count * 7 : count), FARTHEST));
}
