import { calendar } from '../../weigh/index.js';
import { html, type Html } from './html.js';

const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;

export function weekdayText(iso: string): string {
  return weekdays[calendar.weekdayOf(calendar.dayOf(iso))] as string;
}

/** A date as it is written in a file, with its weekday: `Mon 2026-11-30`. */
export function dateText(iso: string): string {
  return `${weekdayText(iso)} ${iso}`;
}

/** A text in which no line ends within a date: a date is one word. */
export function withWholeDates(text: string): Html {
  const pieces = text.split(/(\b\d{4}-\d{2}-\d{2}\b)/);
  return html`${pieces.map((piece, i) => (i % 2 === 1 ? html`<span class="date">${piece}</span>` : html`${piece}`))}`;
}
