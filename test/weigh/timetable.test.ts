import { describe, expect, test } from 'vitest';
import { dayOf } from '../../src/weigh/calendar.js';
import { dayNumber, daysFilled, inScheduleUnits, planTasks, shopTimeOf, type ShopTime } from '../../src/weigh/timetable.js';
import { read } from './weighed.js';

/** The shop's time of a text; the shop is closed on weekends. */
function timeOf(shop = '', header = '', start?: string): ShopTime {
  return shopTimeOf(read(`steelyard 1\nestimate "E"\n${header}shop "Invented Bay"\n  closed saturday, sunday\n${shop}`).resolved.estimate, start === undefined ? undefined : dayOf(start));
}

describe('the shop’s day', () => {
  test('is as long as it says, and eight hours where it says nothing', () => {
    expect(timeOf().hoursPerDay).toBe(8);
    expect(timeOf('  workday 7.5 h\n').hoursPerDay).toBe(7.5);
  });

  test('days are waited for by working days, hours as they are', () => {
    expect([inScheduleUnits(3, 'd', 7.5), inScheduleUnits(3, undefined, 7.5), inScheduleUnits(3, 'wk', 7.5)]).toEqual([22.5, 3, 3]);
  });
});

describe('hours as days', () => {
  const time = timeOf();

  test('fill whole days, a part of one counted as one, the noise of sums as none', () => {
    expect([0.1, 8, 8.0000000001, 8.1, 16, 24.5].map((hours) => daysFilled(hours, time))).toEqual([1, 1, 1, 2, 2, 4]);
    expect(daysFilled(0, time)).toBeCloseTo(0, 12);
  });

  test('lie on the day that they begin on', () => {
    expect([0, 7.9, 8, 7.9999999999, 15.5, 16].map((hours) => dayNumber(hours, time))).toEqual([0, 0, 1, 1, 1, 2]);
  });
});

describe('a wait by the calendar ends, in hours of working time', () => {
  const ends = (wait: 'd' | 'wk' | 'mo' | undefined, time: ShopTime) => {
    const { option } = read('steelyard 1\nshop "S"\n  rate bench 100.00\noption one "One"\n  labour "Work" 2 h\n');
    const [task] = option('one').ready.tasks.map((one) => one.task);
    if (task === undefined) throw new Error('no task');
    const [planned] = planTasks([{ ...task, wait }], 'likely', time);
    return planned;
  };

  test('work has no end of its own, and working days neither', () => {
    expect(ends(undefined, timeOf())).toMatchObject({ kind: 'work', duration: 2 });
    expect(ends('d', timeOf())).toMatchObject({ kind: 'wait', duration: 16 });
    expect([ends(undefined, timeOf())?.endsAt, ends('d', timeOf())?.endsAt]).toEqual([undefined, undefined]);
  });

  test('without a date: as many working days as weeks and months hold on average', () => {
    // Five days a week; a month is 52/12 weeks, 21.67 days, so 22.
    expect(ends('wk', timeOf())?.endsAt?.(4, 2)).toBe(4 + 10 * 8);
    expect(ends('wk', timeOf())?.endsAt?.(0, 0.5)).toBe(3 * 8);
    expect(ends('mo', timeOf())?.endsAt?.(0, 1)).toBe(22 * 8);
    expect(ends('mo', timeOf())?.endsAt?.(0, 2)).toBe(44 * 8);
  });

  // ISO 8601: 2026-11-26 is a Thursday, and 2026-12-26 a Saturday.
  test('with a date: by the days that are open', () => {
    const time = timeOf('', '', '2026-11-26');
    expect(ends('wk', time)?.endsAt?.(0, 1)).toBe(5 * 8);
    // From the second day, the 27th, two weeks later: the eleventh of December, which eleven working days lie before.
    expect(ends('wk', time)?.endsAt?.(8, 2)).toBe(11 * 8);
    // A month later is a Saturday: all 22 working days from the 26th to the 25th lie before it.
    expect(ends('mo', time)?.endsAt?.(0, 1)).toBe(22 * 8);
    // Within the first day, or so close to the second that only the noise of a sum is missing.
    expect([ends('wk', time)?.endsAt?.(7, 1), ends('wk', time)?.endsAt?.(7.999999999, 1)]).toEqual([40, 48]);
  });
});
