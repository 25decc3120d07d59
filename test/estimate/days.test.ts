import { describe, expect, test } from 'vitest';
import { dayOf, isoOf, lastDay, monthsAfter, monthsIn } from '../../src/estimate/index.js';
import { readBlock, type Amount } from '../../src/vocabulary/index.js';
import { parse } from '../../src/language/index.js';

/** A time by the calendar, as `valid` takes it. */
function time(written: string): Amount {
  const [record] = parse('a.yard', `estimate "E"\n  valid ${written}\n`).blocks.flatMap((block) => readBlock(block).records);
  return (record?.values as { readonly valid: Amount }).valid;
}

// Against the platform's own calendar (Date, UTC).
describe('days', () => {
  test.each([['1970-01-01', 0], ['1970-01-02', 1], ['1969-12-31', -1], ['2000-02-29', 11_016], ['2026-11-30', 20_787]])('%s is day %i', (iso, day) => {
    expect(dayOf(iso)).toBe(day);
    expect(dayOf(iso)).toBe(Date.parse(iso) / 86_400_000);
    expect(isoOf(day)).toBe(iso);
  });
});

// As offers and warranties are counted (common practice): the same day of a later month, or its last where it has no such day.
describe('calendar months', () => {
  test.each([
    ['2026-01-31', 1, '2026-02-28'], ['2024-01-31', 1, '2024-02-29'], ['2026-01-31', 3, '2026-04-30'], ['2026-03-31', 1, '2026-04-30'], ['2026-01-31', 2, '2026-03-31'],
    ['2026-02-28', 1, '2026-03-28'], ['2024-02-29', 12, '2025-02-28'], ['2026-12-31', 2, '2027-02-28'], ['2026-11-30', 1, '2026-12-30'], ['2026-12-01', 1, '2027-01-01'],
    ['2026-11-15', 0, '2026-11-15'], ['2026-11-15', 26, '2029-01-15'],
  ])('%s and %i months is %s', (from, months, then) => {
    expect(isoOf(monthsAfter(dayOf(from), months))).toBe(then);
  });
});

describe('the last day of an offer', () => {
  test.each([
    ['14 d', '2026-12-08'], ['0 d', '2026-11-24'], ['1 d', '2026-11-25'], ['1 wk', '2026-12-01'], ['2 wk', '2026-12-08'], ['1 mo', '2026-12-24'], ['3 mo', '2027-02-24'],
    // A day that has begun is no whole day of it.
    ['1.9 d', '2026-11-25'], ['1.5 wk', '2026-12-04'],
    // Part of a month is that part of the days of the month it runs in: of 30 from 24 November, of 31 from 24 December.
    ['0.5 mo', '2026-12-09'], ['1.5 mo', '2027-01-08'], ['1.9 mo', '2027-01-20'], ['0.1 mo', '2026-11-27'], ['1.1 mo', '2026-12-27'], ['0.999999 mo', '2026-12-23'],
    // The quote counts on the likely figure.
    ['7 / 14 / 21 d', '2026-12-08'],
    // Beyond these an offer never runs out: 20 000 days, 1200 months.
    ['20000 d', '2081-08-27'], ['20001 d', '2081-08-27'], ['999999999999 d', '2081-08-27'], ['999999999999 wk', '2081-08-27'], ['1200 mo', '2126-11-24'], ['999999999999 mo', '2126-11-24'],
  ])('of 2026-11-24 for %s', (written, last) => {
    expect(lastDay('2026-11-24', time(written))).toBe(last);
  });
});

// A year of the Gregorian calendar has 365.2425 days on average: 97 leap years in 400.
describe('a time in months', () => {
  test('months are months', () => {
    expect(monthsIn(time('18 mo')).toFixed()).toBe('18');
    expect(monthsIn(time('12 / 18 / 24 mo')).toFixed()).toBe('18');
  });

  test('days and weeks go by the average month', () => {
    expect(monthsIn(time('365 d')).toFixed(6)).toBe(((365 * 12) / 365.2425).toFixed(6));
    expect(monthsIn(time('26 wk')).toFixed(6)).toBe(((182 * 12) / 365.2425).toFixed(6));
    expect(monthsIn(time('1 d')).toFixed(6)).toBe('0.032855');
  });
});
