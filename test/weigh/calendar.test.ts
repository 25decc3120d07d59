import { describe, expect, it } from 'vitest';
import { calendar } from '../../src/weigh/index.js';
import { read, readSound } from './weighed.js';

const { dayOf, isoOf, isOpen, monthsAfter, weekdayOf, workingDayAfter, workingDaysBetween } = calendar;

const weekend = (...closed: readonly string[]) => ({ closedWeekdays: new Set([0, 6]), closedDates: new Set(closed) });
const between = (first: string, last: string, ...closed: readonly string[]) => workingDaysBetween(dayOf(first), dayOf(last), weekend(...closed));

describe('working days, both ends counted', () => {
  it('2014-01-15 to 2014-06-30 is 119 (published example, read)', () => {
    expect(between('2014-01-15', '2014-06-30')).toBe(119);
  });

  it('2009-01-01 to 2009-01-08 is 6, and 4 with holidays on 1 and 2 January (published example, read)', () => {
    expect(between('2009-01-01', '2009-01-08')).toBe(6);
    expect(between('2009-01-01', '2009-01-08', '2009-01-01', '2009-01-02')).toBe(4);
  });

  it('OPM, 28 years from 1997 to 2024: 262 days in 4 years, 261 in 17, 260 in 7 (read, recomputed)', () => {
    const years = Array.from({ length: 28 }, (_, i) => between(`${1997 + i}-01-01`, `${1997 + i}-12-31`));
    const having = (days: number) => years.filter((one) => one === days).length;
    expect([having(262), having(261), having(260)]).toEqual([4, 17, 7]);
  });

  it('a closed date on a weekend takes no further day off (computed)', () => {
    expect(between('2026-11-30', '2026-12-06', '2026-12-05')).toBe(5);
  });
});

describe('the same through a text', () => {
  const text = (hours: number, start: string, closed = '') => `steelyard 1\nestimate "E"\n  start ${start}\nshop "S"\n  rate bench 1.00\n  workday 8 h\n  closed saturday, sunday\n${closed}option one "One"\n  labour "Work" ${hours} h\n`;
  const ready = (...of: Parameters<typeof text>) => readSound(text(...of)).option('one').ready;

  it('119 days of work from 2014-01-15 end on 2014-06-30 (from the published example, read)', () => {
    expect(ready(119 * 8, '2014-01-15').date).toBe('2014-06-30');
    expect(ready(119 * 8, '2014-01-15').days.likely.toFixed()).toBe('119');
  });

  it('6 days of work from 2009-01-01 end on 2009-01-08, and 4 where 1 and 2 January are closed (from the published example, read)', () => {
    expect(ready(48, '2009-01-01').date).toBe('2009-01-08');
    expect(ready(32, '2009-01-01', '  closed 2009-01-01, 2009-01-02\n').date).toBe('2009-01-08');
  });

  it('a day that is begun is a day, and no work is done in one (computed)', () => {
    expect(ready(8, '2026-11-30').date).toBe('2026-11-30');
    expect(ready(9, '2026-11-30').date).toBe('2026-12-01');
  });

  it('a week by the calendar is five working days, a wait in d counts working days (computed)', () => {
    const wait = (arrives: string) => readSound(text(8, '2026-11-30').replace('option one "One"\n', `option one "One"\n  part "P" 1 new arrives ${arrives}\n`)).option('one').ready;
    expect([wait('1 wk').date, wait('5 d').date, wait('7 d').date]).toEqual(['2026-12-07', '2026-12-07', '2026-12-09']);
    // Nothing is opened before the part is there: the bay is free, and nobody waits in it.
    expect([wait('1 wk'), wait('7 d')].map(({ waiting, bay }) => [waiting.likely.toFixed(), bay.likely.toFixed()])).toEqual([['0', '1'], ['0', '1']]);
    // Where it is opened first, the vehicle waits in the bay: all of the wait but the first day, on which it is opened.
    const opened = (arrives: string) => readSound(text(8, '2026-11-30').replace('"Work" 8 h', '"Work" 8 h with out').replace('option one "One"\n', `access out "Out"\n  remove 8 h\noption one "One"\n  part "P" 1 new arrives ${arrives}\n`)).option('one').ready;
    expect([opened('1 wk'), opened('5 d'), opened('7 d')].map(({ waiting, date }) => [waiting.likely.toFixed(), date])).toEqual([['4', '2026-12-07'], ['4', '2026-12-07'], ['6', '2026-12-09']]);
  });
});

describe('days (computed)', () => {
  it('go to text and back, with the right day of the week', () => {
    // 1970-01-01 was a Thursday, 2000-02-29 a Tuesday, 2026-11-30 a Monday, 1900-01-01 a Monday.
    for (const [iso, weekday] of [['1970-01-01', 4], ['2000-02-29', 2], ['2026-11-30', 1], ['1900-01-01', 1]] as const) {
      expect(isoOf(dayOf(iso))).toBe(iso);
      expect(weekdayOf(dayOf(iso))).toBe(weekday);
    }
  });

  it('months end where they end', () => {
    expect(isoOf(monthsAfter(dayOf('2024-01-31'), 1))).toBe('2024-02-29');
    expect(isoOf(monthsAfter(dayOf('2023-01-31'), 1))).toBe('2023-02-28');
    expect(isoOf(monthsAfter(dayOf('2026-11-30'), 3))).toBe('2027-02-28');
  });

  it('count forward over what is closed, and give up where nothing ever opens', () => {
    expect(isoOf(workingDayAfter(dayOf('2026-12-05'), 0, weekend()) as number)).toBe('2026-12-07');
    expect(isoOf(workingDayAfter(dayOf('2026-12-23'), 2, weekend('2026-12-24', '2026-12-25')) as number)).toBe('2026-12-29');
    expect(workingDayAfter(dayOf('2026-12-05'), 0, { closedWeekdays: new Set([0, 1, 2, 3, 4, 5, 6]), closedDates: new Set() })).toBeUndefined();
    expect(isOpen(dayOf('2026-12-25'), weekend('2026-12-25'))).toBe(false);
  });
});

describe('compression: lowest at least 75 % of the highest (TM 5-4210-230-14&P-1, read)', () => {
  const advice = (readings: string) => {
    const { diagnostics, errors } = read(`steelyard 1\nfinding low "Compression"\n  compression ${readings} psi\n`);
    expect(errors).toEqual([]);
    return diagnostics.filter((one) => one.code === 'compression-uneven');
  };

  it('150/148/112/145 is 74.7 %: advised, and never more than advised', () => {
    const [found, ...more] = advice('150 148 112 145');
    expect(more).toEqual([]);
    expect(found?.text).toContain('74.7 %');
    expect(found?.severity).toBe('advice');
  });

  it('445/440/405/435 is 91.0 %: passes', () => {
    expect(advice('445 440 405 435')).toEqual([]);
  });

  it('exactly 75 % passes, and just below does not (computed)', () => {
    expect(advice('160 120')).toEqual([]);
    expect(advice('160 119.9')).toHaveLength(1);
  });

  it('one reading, or none but zeros, has nothing to be compared with (computed)', () => {
    expect([advice('150'), advice('0 0 0')]).toEqual([[], []]);
  });
});
