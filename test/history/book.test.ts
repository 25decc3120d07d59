import { describe, expect, test } from 'vitest';
import { FEW, historyOf, labourJob, type Case } from '../../src/weigh/history/index.js';
import { LEAST_FOR_TREND, MOST_FOR_TREND } from '../../src/weigh/history/book.js';

const pump = labourJob({ name: 'pump', title: 'Coolant pump' }, ['out']);
const day = (i: number) => new Date(Date.UTC(2020, 0, 1 + i)).toISOString().slice(0, 10);
const cases = (hours: readonly number[], estimated: number | undefined = 4, step = 30): Case[] => hours.map((one, i) => ({ job: pump, hours: one, estimated, on: day(i * step) }));
const only = (list: readonly Case[]) => historyOf(list)[0];

describe('an entry', () => {
  // By hand, definition 8 for nine values: 10 % lies at (9 + 1/3) × 0.1 + 1/3 = 1.2667, 90 % at 8.7333, the middle at 5.
  test('has its percentiles, worked by hand', () => {
    const entry = only(cases([3, 1, 2, 9, 8, 7, 6, 5, 4]));
    expect(entry?.hours.low).toBeCloseTo(1 + 4 / 15, 12);
    expect(entry?.hours.middle).toBe(5);
    expect(entry?.hours.high).toBeCloseTo(8 + 11 / 15, 12);
    expect(entry).toMatchObject({ count: 9, few: false, hours: { least: 1, most: 9 } });
  });

  // By hand: ratios 0.75 1 1 1.25 1.5, middle 1, distances 0 0 0.25 0.25 0.5, so the spread is 0.25.
  test('has the ratio to the estimate, worked by hand', () => {
    expect(only(cases([3, 4, 4, 5, 6]))?.ratio).toEqual({ middle: 1, spread: 0.25, count: 5 });
    expect(only(cases([3, 4], Number.NaN).map((one) => ({ ...one, estimated: undefined })))?.ratio).toBeUndefined();
  });

  test('says that they are few below five, and then calls none far off', () => {
    expect(only(cases([3, 4, 4, 90]))).toMatchObject({ few: true, farOff: [] });
    expect(only(cases([3, 4, 5, 4.5, 90]))).toMatchObject({ few: false, farOff: [{ hours: 90 }] });
    expect(FEW).toBe(5);
  });

  test('is one for each way in, and for each sort of line', () => {
    const keys = [labourJob({ name: 'pump', title: 'A' }, []), labourJob({ name: undefined, title: 'pump' }, []), labourJob({ name: 'pump', title: 'A' }, ['b', 'a']), labourJob({ name: 'pump', title: 'B' }, ['a', 'b'])].map(({ key }) => key);
    expect(keys).toEqual(['labour pump', 'labour "pump"', 'labour pump with a, b', 'labour pump with a, b']);
  });

  test('is called as it was called last', () => {
    const renamed = [...cases([4]), { ...cases([4])[0] as Case, job: { ...pump, title: 'Water pump' }, on: '2031-01-01' }];
    expect(only(renamed)?.job.title).toBe('Water pump');
    expect(only([...renamed].reverse())?.job.title).toBe('Water pump');
  });

  test('does not hang on the order in which files are read', () => {
    const list = [...cases([3, 9, 4, 4, 5, 5, 2, 8, 7, 7, 6, 30]), ...cases([3, 5])];
    const first = JSON.stringify(historyOf(list));
    for (let i = 1; i < list.length; i++) expect(JSON.stringify(historyOf([...list.slice(i), ...list.slice(0, i)].reverse()))).toBe(first);
  });
});

describe('a trend', () => {
  const rising = Array.from({ length: LEAST_FOR_TREND }, (_, i) => 4 + i * 0.5);

  // By hand: 0.5 h in 30 days are 0.5 × 365.25 / 30 = 6.0875 h in a year.
  test('is told from ten cases on', () => {
    expect(only(cases(rising))?.trend).toMatchObject({ from: '2020-01-01', to: day(270), count: 10 });
    expect(only(cases(rising))?.trend?.hoursPerYear).toBeCloseTo(6.0875, 9);
    expect(only(cases(rising.slice(1)))?.trend).toBeUndefined();
  });

  test('is not told where chance would give as much, or no day is known', () => {
    expect(only(cases([4, 6, 5, 4, 6, 5, 4, 6, 5, 4, 6, 5]))?.trend).toBeUndefined();
    expect(only(cases(rising).map((one) => ({ ...one, on: undefined })))?.trend).toBeUndefined();
    expect(only(cases(rising, 4, 0))?.trend).toBeUndefined();
  });

  test('looks at the last cases only, of which every pair is worked', () => {
    const long = [...cases(Array.from({ length: 300 }, () => 40), 4, 1), ...cases(Array.from({ length: MOST_FOR_TREND }, (_, i) => 4 + i * 0.01), 4, 1).map((one, i) => ({ ...one, on: day(300 + i) }))];
    expect(only(long)?.trend).toMatchObject({ count: MOST_FOR_TREND, from: day(300) });
    expect(only(long)?.trend?.hoursPerYear).toBeCloseTo(3.6525, 9);
  });
});
