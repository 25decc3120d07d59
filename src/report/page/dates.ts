import { calendar } from '../../weigh/index.js';

const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;

export function weekdayText(iso: string): string {
  return weekdays[calendar.weekdayOf(calendar.dayOf(iso))] as string;
}

/** A date as it is written in a file, with its weekday: `Mon 2026-11-30`. */
export function dateText(iso: string): string {
  return `${weekdayText(iso)} ${iso}`;
}
