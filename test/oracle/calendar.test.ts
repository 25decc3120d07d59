import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calendar } from '../../src/weigh/index.js';
import { waitEndsOn, workingDaysFrom } from '../../src/weigh/working-days.js';
import { runs } from '../support/random-runs.js';
import { daysBetween, daysLater, isOpen, monthsLater, nextDay, workingDayAfter, workingDaysBetween } from './day-walk.js';

const WEEKDAYS = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];
const { dayOf, isoOf } = calendar;

/** Days over four years with a 29 February, and single closed days near them. */
const day = fc.integer({ min: 0, max: 1500 }).map((count) => daysLater('2023-12-01', count));
const shops = fc.record({ weekly: fc.subarray(WEEKDAYS, { maxLength: 5 }), dates: fc.array(day, { maxLength: 12 }) })
  .map(({ weekly, dates }) => ({
    walked: { kind: 'shop', closed: [...weekly, ...dates] },
    product: { closedWeekdays: new Set(weekly.length === 0 ? [0, 6] : weekly.map((name) => WEEKDAYS.indexOf(name))), closedDates: new Set(dates) },
  }));

describe('days by arithmetic equal days that are walked one by one', () => {
  it('the walk itself: over month, year and leap day (Gregorian calendar)', () => {
    expect([nextDay('2024-02-28'), nextDay('2024-02-29'), nextDay('2025-02-28'), nextDay('2026-12-31'), nextDay('2100-02-28')]).toEqual(['2024-02-29', '2024-03-01', '2025-03-01', '2027-01-01', '2100-03-01']);
    expect([monthsLater('2026-11-30', 3), monthsLater('2024-01-31', 1), monthsLater('2026-12-31', 0)]).toEqual(['2027-02-28', '2024-02-29', '2026-12-31']);
  });

  it('open days, and the working day so many later', () => {
    fc.assert(fc.property(shops, day, fc.nat({ max: 40 }), ({ walked, product }, from, count) => {
      expect(calendar.isOpen(dayOf(from), product)).toBe(isOpen(walked, from));
      expect(isoOf(calendar.workingDayAfter(dayOf(from), count, product) as number)).toBe(workingDayAfter(walked, from, count));
    }), runs(40_401, 400));
  });

  it('working days between two days, both counted', () => {
    fc.assert(fc.property(shops, day, fc.nat({ max: 200 }), ({ walked, product }, from, length) => {
      const last = daysLater(from, length);
      expect(calendar.workingDaysBetween(dayOf(from), dayOf(last), product)).toBe(workingDaysBetween(walked, from, last));
      expect(dayOf(last) - dayOf(from) + 1).toBe(daysBetween(from, last));
    }), runs(40_402, 200));
  });

  it('working days by their number, in whatever order they are asked for', () => {
    fc.assert(fc.property(shops, day, fc.array(fc.nat({ max: 120 }), { minLength: 1, maxLength: 8 }), ({ walked, product }, from, numbers) => {
      const days = workingDaysFrom(dayOf(from), product);
      for (const number of numbers) {
        const iso = workingDayAfter(walked, from, number);
        expect(isoOf(days.day(number))).toBe(iso);
        expect(days.before(dayOf(iso))).toBe(number);
      }
    }), runs(40_403, 150));
  });

  it('months later, to the last day where a month is shorter; waits in days, weeks and months', () => {
    fc.assert(fc.property(shops, day, fc.nat({ max: 80 }), fc.nat({ max: 40 }), ({ walked, product }, from, months, count) => {
      expect(isoOf(calendar.monthsAfter(dayOf(from), months))).toBe(monthsLater(from, months));
      const ends = (['d', 'wk', 'mo'] as const).map((unit) => isoOf(waitEndsOn(dayOf(from), count, unit, product) as number));
      expect(ends).toEqual([workingDayAfter(walked, from, count), daysLater(from, count * 7), monthsLater(from, count)]);
    }), runs(40_404, 250));
  });
});
