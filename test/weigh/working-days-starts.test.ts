import { expect, test } from 'vitest';
import { dayOf, isoOf, type WorkingCalendar } from '../../src/weigh/calendar.js';
import { workingDaysFrom } from '../../src/weigh/working-days.js';

test('two estimates of one shop count from their own first day', () => {
  // By the calendar of ISO 8601 2026-11-26 is a Thursday, 2026-11-30 a Monday.
  const shop: WorkingCalendar = { closedWeekdays: new Set([0, 6]), closedDates: new Set() };
  const [thursday, monday, again] = ['2026-11-26', '2026-11-30', '2026-11-26'].map((iso) => workingDaysFrom(dayOf(iso), shop));
  expect([thursday, monday, again].map((days) => [0, 2].map((number) => isoOf(days?.day(number) ?? 0)))).toEqual([['2026-11-26', '2026-11-30'], ['2026-11-30', '2026-12-02'], ['2026-11-26', '2026-11-30']]);
});
