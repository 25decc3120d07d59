import { dayOf, isoOf } from '../estimate/index.js';
import { plain } from '../report/index.js';
import { InputError } from './files.js';
import type { Terminal } from './terminal.js';

/** The day (YYYY-MM-DD) on the clock of this machine, where nobody says another. The one place in the terminal that reads it. */
export function todayOf({ today }: Pick<Terminal, 'today'>): string {
  if (today !== undefined) return today;
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The day that is asked for with --today. */
export function dayFrom(written: string): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(written) || !sameDay(written)) throw new InputError(`--today takes a day such as 2026-11-24, not ${plain(written)}.`);
  return written;
}

/** Months and days that do not exist run over into the next. */
function sameDay(written: string): boolean {
  const day = dayOf(written);
  return Number.isFinite(day) && isoOf(day) === written;
}
