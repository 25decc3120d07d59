import { describe, expect, test } from 'vitest';
import { units } from '../../src/vocabulary/units.js';
import { dayOf, isoOf, type WorkingCalendar } from '../../src/weigh/calendar.js';
import { calendarWaitEndsOn, waitEndsOn, waitUnitOf, workingDaysFrom } from '../../src/weigh/working-days.js';

// Weekdays by the calendar of ISO 8601: 2026-11-26 is a Thursday, 2026-12-08 a Tuesday.
const thursday = dayOf('2026-11-26');
const shop = (closedDates: readonly string[] = [], closedWeekdays: readonly number[] = [0, 6]): WorkingCalendar => ({ closedWeekdays: new Set(closedWeekdays), closedDates: new Set(closedDates) });

describe('working days, counted from a first day', () => {
  const days = workingDaysFrom(thursday, shop(['2026-12-01']));

  test('go over weekends and closed dates; the first is number 0', () => {
    expect([0, 1, 2, 3, 4].map((number) => isoOf(days.day(number)))).toEqual(['2026-11-26', '2026-11-27', '2026-11-30', '2026-12-02', '2026-12-03']);
  });

  test('before a day: a closed day has as many before it as the next open one', () => {
    const before = (iso: string) => days.before(dayOf(iso));
    expect(['2026-11-26', '2026-11-27', '2026-11-28', '2026-11-29', '2026-11-30', '2026-12-01', '2026-12-02', '2026-12-03'].map(before)).toEqual([0, 1, 2, 2, 2, 3, 3, 4]);
  });

  test('none lie before the first, and before what is earlier still', () => {
    expect([thursday, thursday - 1, thursday - 4000].map((day) => days.before(day))).toEqual([0, 0, 0]);
  });

  test('a part of a day lies on that day, and what is before the start at the start', () => {
    expect([1.9, 2, 0.1, -3].map((number) => isoOf(days.day(number)))).toEqual(['2026-11-27', '2026-11-30', '2026-11-26', '2026-11-26']);
  });

  test('start on the next open day where the first is closed', () => {
    const saturday = workingDaysFrom(dayOf('2026-11-28'), shop());
    expect([0, 1].map((number) => isoOf(saturday.day(number)))).toEqual(['2026-11-30', '2026-12-01']);
    expect(['2026-11-29', '2026-11-30', '2026-12-01'].map((iso) => saturday.before(dayOf(iso)))).toEqual([0, 0, 1]);
  });

  test('each day is the one that so many lie before, for two years on end, asked in any order', () => {
    const calendar = shop(['2026-12-25', '2027-01-01', '2027-05-03']);
    const counted = workingDaysFrom(thursday, calendar);
    const numbers = Array.from({ length: 500 }, (_, i) => (i * 173) % 500);
    for (const number of numbers) expect(counted.before(counted.day(number))).toBe(number);
    // 104 whole weeks of five days, less three closed ones: Friday, Friday and Monday.
    expect(counted.before(thursday + 728)).toBe(517);
  });

  test('of a shop that never opens there are none', () => {
    const never = workingDaysFrom(thursday, shop([], [0, 1, 2, 3, 4, 5, 6]));
    expect(never.day(3)).toBe(thursday);
    expect(never.before(thursday + 100)).toBe(0);
  });

  test('of a shop that closes for good the last known one stands for all after it', () => {
    const untilTuesday: WorkingCalendar = { closedWeekdays: new Set(), closedDates: new (class extends Set<string> { override has(iso: string) { return iso > '2026-12-01'; } override get size() { return Infinity; } })() };
    const days = workingDaysFrom(thursday, untilTuesday);
    expect([5, 6, 7000].map((number) => isoOf(days.day(number)))).toEqual(['2026-12-01', '2026-12-01', '2026-12-01']);
    expect(days.before(thursday + 300)).toBe(6);
  });

  test('far beyond what a calendar is searched for there is still an answer', () => {
    const daily = workingDaysFrom(thursday, shop([], []));
    expect(daily.before(thursday + 19_999)).toBe(19_999);
    expect(daily.before(thursday + 1_000_000)).toBe(20_000);
    expect(daily.day(19_000)).toBe(thursday + 19_000);
  });
});

describe('a wait by the calendar ends', () => {
  // Calendar arithmetic by hand; a part of a week or month is rounded up to a whole day: 1.5 mo from 15 January is
  // half of the 28 days from 15 February later, 1.1 mo from 1 March a tenth of the 30 days of April, not a day more by binary noise.
  test.each([
    ['2026-11-26', 2, 'wk', '2026-12-10'],
    ['2026-11-26', 0.5, 'wk', '2026-11-30'],
    ['2026-11-26', 0, 'wk', '2026-11-26'],
    ['2027-01-15', 1, 'mo', '2027-02-15'],
    ['2027-01-31', 1, 'mo', '2027-02-28'],
    ['2027-01-15', 1.5, 'mo', '2027-03-01'],
    ['2027-01-01', 0.5, 'mo', '2027-01-17'],
    ['2027-03-01', 1.1, 'mo', '2027-04-04'],
    ['2027-01-31', 1.5, 'mo', '2027-03-16'],
    ['2027-11-30', 3, 'mo', '2028-02-29'],
  ] as const)('from %s after %d %s on %s', (from, value, unit, end) => {
    expect(isoOf(calendarWaitEndsOn(dayOf(from), value, unit))).toBe(end);
    expect(waitEndsOn(dayOf(from), value, unit, shop())).toBe(dayOf(end));
  });

  test('a century of months or so many weeks at the latest', () => {
    expect(isoOf(calendarWaitEndsOn(thursday, 5000, 'mo'))).toBe('2126-11-26');
    expect(calendarWaitEndsOn(thursday, 5000, 'wk')).toBe(thursday + 8400);
  });
});

describe('a wait in working days', () => {
  const end = (count: number, calendar = shop(['2026-12-01'])) => {
    const day = waitEndsOn(thursday, count, 'd', calendar);
    return day === undefined ? undefined : isoOf(day);
  };

  test('goes over weekends and closed dates, a part of a day rounded up', () => {
    expect([0, 1, 2, 2.5, 3].map((count) => end(count))).toEqual(['2026-11-26', '2026-11-27', '2026-11-30', '2026-12-02', '2026-12-02']);
  });

  test('has no end where the shop never opens', () => {
    expect(end(1, shop([], [0, 1, 2, 3, 4, 5, 6]))).toBeUndefined();
  });

  test('is what a wait without a unit is', () => {
    expect([undefined, 'd', 'wk', 'mo', 'h'].map((word) => waitUnitOf(word === undefined ? { unit: undefined } : { unit: units.find((one) => one.word === word) }))).toEqual(['d', 'd', 'wk', 'mo', 'd']);
  });
});
