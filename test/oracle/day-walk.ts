/**
 * Working days found by walking from day to day, without arithmetic on day numbers. Nothing here comes from the product.
 */
import { names } from './prices.js';
import type { Json } from './reader.js';

const WEEKDAYS = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];

const two = (count: number) => String(count).padStart(2, '0');

/** Days of the months; every fourth year has a 29 February, but of the hundreds only every fourth (Gregorian calendar). */
function lengthOf(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

export function nextDay(iso: string): string {
  const year = Number(iso.slice(0, 4));
  const month = Number(iso.slice(5, 7));
  const day = Number(iso.slice(8));
  if (day < lengthOf(year, month)) return `${iso.slice(0, 8)}${two(day + 1)}`;
  return month < 12 ? `${iso.slice(0, 5)}${two(month + 1)}-01` : `${String(year + 1).padStart(4, '0')}-01-01`;
}

export function daysLater(iso: string, count: number): string {
  let day = iso;
  for (let i = 0; i < count; i++) day = nextDay(day);
  return day;
}

/** So many calendar months later, or the last day of that month where it is shorter: from month to month. */
export function monthsLater(iso: string, count: number): string {
  let [year, month] = iso.split('-').map(Number) as [number, number];
  for (let i = 0; i < count; i++) [year, month] = month === 12 ? [year + 1, 1] : [year, month + 1];
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(Math.min(Number(iso.slice(8)), lengthOf(year, month)))}`;
}

/** Whether the shop works on a day: saturday and sunday are closed where it names no day of the week. */
export function isOpen(shop: Json, iso: string): boolean {
  const closed = names(shop['closed']);
  const weekly = closed.filter((day) => WEEKDAYS.includes(day));
  const weekday = WEEKDAYS[new Date(`${iso}T12:00:00Z`).getUTCDay()] as string;
  return !(weekly.length === 0 ? ['saturday', 'sunday'] : weekly).includes(weekday) && !closed.includes(iso);
}

/** The working day that is so many after the first one on or after a day. */
export function workingDayAfter(shop: Json, from: string, count: number): string {
  let day = from;
  for (let left = count; ; day = nextDay(day)) {
    if (!isOpen(shop, day)) continue;
    if (left === 0) return day;
    left--;
  }
}

/** Days by the calendar from one to another, both counted. */
export function daysBetween(first: string, last: string): number {
  let count = 1;
  for (let day = first; day < last; day = nextDay(day)) count++;
  return count;
}

/** Working days from one day to another, both counted. */
export function workingDaysBetween(shop: Json, first: string, last: string): number {
  let count = 0;
  for (let day = first; day <= last; day = nextDay(day)) if (isOpen(shop, day)) count++;
  return count;
}
