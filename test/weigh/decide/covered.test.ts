import { describe, expect, it } from 'vitest';
import { Decimal } from '../../../src/vocabulary/index.js';
import { coverOf, type CoverAnswer, type CoverRange, type CoverVehicle } from '../../../src/weigh/decide/covered.js';

const ON = '2026-11-30';
const mi = (value: number | string) => ({ value: new Decimal(value), unit: 'mi' } as const);
const km = (value: number | string) => ({ value: new Decimal(value), unit: 'km' } as const);
const ask = (range: CoverRange, vehicle: CoverVehicle = {}, on = ON): CoverAnswer => coverOf({ range, vehicle, on });

/** The answer, and what each condition came to. */
function told(answer: CoverAnswer) {
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.problems));
  return [answer.answer, ...answer.reasons.map((reason) => [reason.condition, reason.holds, reason.missing].filter((one) => one !== undefined).join(': '))];
}

type Row = readonly [says: string, range: CoverRange, vehicle: CoverVehicle, told: readonly string[], on?: string];

const rows: readonly Row[] = [
  // Days against days: bounds are included.
  ['built the day before it begins', { builtFrom: '2012-06-15' }, { built: '2012-06-14' }, ['not covered', 'built from: no']],
  ['built on the day it begins', { builtFrom: '2012-06-15' }, { built: '2012-06-15' }, ['covered', 'built from: yes']],
  ['built on the day it ends', { builtTo: '2012-06-15' }, { built: '2012-06-15' }, ['covered', 'built to: yes']],
  ['built the day after it ends', { builtTo: '2012-06-15' }, { built: '2012-06-16' }, ['not covered', 'built to: no']],
  ['built before a range with two ends', { builtFrom: '2012-01-01', builtTo: '2012-12-31' }, { built: '2011-12-31' }, ['not covered', 'built from: no', 'built to: yes']],
  // Months as bounds: the first day as a beginning, the last as an end.
  ['a month begins on its first', { builtFrom: '2012-06' }, { built: '2012-06-01' }, ['covered', 'built from: yes']],
  ['a month ends on its last, a leap year', { builtTo: '2012-02' }, { built: '2012-02-29' }, ['covered', 'built to: yes']],
  ['and not after', { builtTo: '2012-02' }, { built: '2012-03-01' }, ['not covered', 'built to: no']],
  // A month in which it was built.
  ['a month within', { builtFrom: '2012-06', builtTo: '2012-06' }, { built: '2012-06' }, ['covered', 'built from: yes', 'built to: yes']],
  ['a month that straddles the beginning', { builtFrom: '2012-06-15' }, { built: '2012-06' }, ['unknown', 'built from: unknown: day built']],
  ['a month that straddles the end', { builtTo: '2012-06-29' }, { built: '2012-06' }, ['unknown', 'built to: unknown: day built']],
  ['a month that ends with the range', { builtTo: '2012-06-30' }, { built: '2012-06' }, ['covered', 'built to: yes']],
  ['a month that begins with the range', { builtFrom: '2012-06-01' }, { built: '2012-06' }, ['covered', 'built from: yes']],
  ['the month before', { builtFrom: '2012-06-15' }, { built: '2012-05' }, ['not covered', 'built from: no']],
  ['a range inside the month', { builtFrom: '2012-06-10', builtTo: '2012-06-20' }, { built: '2012-06' }, ['unknown', 'built from: unknown: day built', 'built to: unknown: day built']],
  // Missing facts: unknown, unless something else fails.
  ['no date', { builtFrom: '2012-06' }, {}, ['unknown', 'built from: unknown: built']],
  ['no model year', { modelYears: [2012] }, { built: '2012-06' }, ['unknown', 'model year: unknown: model year']],
  ['no odometer', { mostDistance: mi(120_000) }, {}, ['unknown', 'distance: unknown: odometer']],
  ['no date for the months', { withinMonthsOfBuild: 120 }, {}, ['unknown', 'months since build: unknown: built']],
  ['no odometer, but too late', { mostDistance: mi(120_000), until: '2026-11-29' }, {}, ['not covered', 'distance: unknown: odometer', 'until: no']],
  ['no condition', {}, { built: '2012-06' }, ['unknown']],
  ['a model year of the list, but no odometer', { modelYears: [2012], mostDistance: mi(120_000) }, { modelYear: 2012 }, ['unknown', 'model year: yes', 'distance: unknown: odometer']],
  // Model years.
  ['a model year of the list', { modelYears: [2011, 2013] }, { modelYear: 2013 }, ['covered', 'model year: yes']],
  ['one between', { modelYears: [2011, 2013] }, { modelYear: 2012 }, ['not covered', 'model year: no']],
  // Distances: NIST SP 811, 1 mile is 1.609344 km exactly.
  ['exactly the distance', { mostDistance: mi(100_000) }, { odometer: mi(100_000) }, ['covered', 'distance: yes']],
  ['the same in km', { mostDistance: mi(100_000) }, { odometer: km('160934.4') }, ['covered', 'distance: yes']],
  ['and a tenth of a km more', { mostDistance: mi(100_000) }, { odometer: km('160934.5') }, ['not covered', 'distance: no']],
  ['miles against km', { mostDistance: km(160_000) }, { odometer: mi(99_420) }, ['not covered', 'distance: no']],
  ['miles against km, below', { mostDistance: km(160_000) }, { odometer: mi(99_419) }, ['covered', 'distance: yes']],
  // A last day.
  ['on the last day', { until: ON }, {}, ['covered', 'until: yes']],
  ['the day after', { until: '2026-11-29' }, {}, ['not covered', 'until: no']],
  ['a last month', { until: '2026-11' }, {}, ['covered', 'until: yes']],
  ['the month before', { until: '2026-10' }, {}, ['not covered', 'until: no']],
  // Months since it was built.
  ['120 months to the day', { withinMonthsOfBuild: 120 }, { built: '2016-11-30' }, ['covered', 'months since build: yes']],
  ['a day more', { withinMonthsOfBuild: 120 }, { built: '2016-11-29' }, ['not covered', 'months since build: no']],
  ['a month that straddles', { withinMonthsOfBuild: 120 }, { built: '2016-11' }, ['unknown', 'months since build: unknown: day built'], '2026-11-29'],
  ['a month whose last day it is', { withinMonthsOfBuild: 120 }, { built: '2016-11' }, ['unknown', 'months since build: unknown: day built']],
  ['a month that is over', { withinMonthsOfBuild: 120 }, { built: '2016-11' }, ['not covered', 'months since build: no'], '2026-12-01'],
  ['a month that has only begun to end', { withinMonthsOfBuild: 120 }, { built: '2016-11' }, ['covered', 'months since build: yes'], '2026-11-01'],
  ['from a leap day: to the last of February', { withinMonthsOfBuild: 12 }, { built: '2012-02-29' }, ['covered', 'months since build: yes'], '2013-02-28'],
  ['and no longer', { withinMonthsOfBuild: 12 }, { built: '2012-02-29' }, ['not covered', 'months since build: no'], '2013-03-01'],
  ['no month: the day it was built', { withinMonthsOfBuild: 0 }, { built: ON }, ['covered', 'months since build: yes']],
  // Half of the 31 days from 31 October are 15.5: the sixteenth day has not passed.
  ['a month and a half', { withinMonthsOfBuild: 1.5 }, { built: '2026-09-30' }, ['covered', 'months since build: yes'], '2026-11-14'],
  ['and no longer', { withinMonthsOfBuild: 1.5 }, { built: '2026-09-30' }, ['not covered', 'months since build: no'], '2026-11-15'],
  ['the most months', { withinMonthsOfBuild: 1200 }, { built: '1926-11-30' }, ['covered', 'months since build: yes']],
  // Days since it was built.
  ['90 days to the day', { withinDaysOfBuild: 90 }, { built: '2026-09-01' }, ['covered', 'days since build: yes']],
  ['and a day more', { withinDaysOfBuild: 90 }, { built: '2026-08-31' }, ['not covered', 'days since build: no']],
  ['a month in which that may be', { withinDaysOfBuild: 90 }, { built: '2026-09' }, ['covered', 'days since build: yes']],
  ['a month that straddles it', { withinDaysOfBuild: 80 }, { built: '2026-09' }, ['unknown', 'days since build: unknown: day built']],
  // All together.
  ['all hold', { builtFrom: '2012-01', builtTo: '2013-06', modelYears: [2012, 2013], mostDistance: mi(150_000), until: '2027-12-31', withinMonthsOfBuild: 180 }, { built: '2012-11', modelYear: 2013, odometer: mi(131_400) },
    ['covered', 'built from: yes', 'built to: yes', 'model year: yes', 'distance: yes', 'until: yes', 'months since build: yes']],
  ['the time holds, the distance does not: whichever comes first', { mostDistance: mi(120_000), withinMonthsOfBuild: 180 }, { built: '2012-11', odometer: mi(131_400) }, ['not covered', 'distance: no', 'months since build: yes']],
];

it.each(rows.map(([says, range, vehicle, expected, on]) => ({ says, range, vehicle, expected, on: on ?? ON })))('$says (computed)', ({ range, vehicle, expected, on }) => {
  expect(told(ask(range, vehicle, on))).toEqual(expected);
});

describe('reasons say what was compared', () => {
  it('limits, what was found, and the days between which the months end', () => {
    expect(ask({ builtFrom: '2012-06-15', mostDistance: km(200_000), withinMonthsOfBuild: 180 }, { built: '2012-06', odometer: mi(131_400) })).toEqual({
      kind: 'answered', answer: 'not covered',
      reasons: [
        { condition: 'built from', limit: '2012-06-15', found: '2012-06', holds: 'unknown', missing: 'day built' },
        { condition: 'distance', limit: km(200_000), found: mi(131_400), holds: 'no', missing: undefined },
        { condition: 'months since build', limit: 180, found: ON, built: '2012-06', ends: { first: '2027-06-01', last: '2027-06-30' }, holds: 'yes', missing: undefined },
      ],
    });
  });

  it('a day known is never less certain than its month: over a month and a range of days, all agree with some day', () => {
    const days = Array.from({ length: 30 }, (_, i) => `2012-06-${String(i + 1).padStart(2, '0')}`);
    const answer = (range: CoverRange, built: string) => told(ask(range, { built }))[0];
    for (const builtFrom of ['2012-05-31', '2012-06-01', '2012-06-02', '2012-06-15', '2012-06-29', '2012-06-30', '2012-07-01']) {
      const single = new Set(days.map((day) => answer({ builtFrom }, day)));
      expect(answer({ builtFrom }, '2012-06'), builtFrom).toBe(single.size === 1 ? [...single][0] : 'unknown');
    }
  });
});

describe('what can not be answered comes back as problems', () => {
  const cases: readonly [string, CoverRange, CoverVehicle, string, object][] = [
    ['a day that does not exist', { builtFrom: '2013-02-29' }, {}, ON, { kind: 'no such date', of: 'builtFrom', written: '2013-02-29' }],
    ['a date in another writing', { until: '30.11.2026' }, {}, ON, { kind: 'no such date', of: 'until', written: '30.11.2026' }],
    ['a vehicle’s month 13', {}, { built: '2012-13' }, ON, { kind: 'no such date', of: 'built', written: '2012-13' }],
    ['asked about a month', {}, {}, '2026-11', { kind: 'no such date', of: 'on', written: '2026-11' }],
    ['a day that does not exist, which is held against no other', { builtFrom: '2013-02-29', builtTo: '2012-06-14' }, {}, ON, { kind: 'no such date', of: 'builtFrom', written: '2013-02-29' }],
    ['a range that ends before it begins', { builtFrom: '2012-06-15', builtTo: '2012-06-14' }, {}, ON, { kind: 'ends before it begins', builtFrom: '2012-06-15', builtTo: '2012-06-14' }],
    ['and by the month', { builtFrom: '2012-06-15', builtTo: '2012-05' }, {}, ON, { kind: 'ends before it begins', builtFrom: '2012-06-15', builtTo: '2012-05' }],
    ['asked before it was built', {}, { built: '2026-12' }, ON, { kind: 'asked before it was built', on: ON, built: '2026-12' }],
    ['no model year in the list', { modelYears: [] }, {}, ON, { kind: 'no such model year', of: 'modelYears', written: [] }],
    ['half a model year', {}, { modelYear: 2012.5 }, ON, { kind: 'no such model year', of: 'modelYear', written: [2012.5] }],
    ['a distance below 0', { mostDistance: mi(-1) }, {}, ON, { kind: 'no such distance', of: 'mostDistance', written: mi(-1) }],
    ['an odometer that is not a number', {}, { odometer: km(NaN) }, ON, { kind: 'no such distance', of: 'odometer', written: km(NaN) }],
    ['more than a hundred years', { withinMonthsOfBuild: 1201 }, {}, ON, { kind: 'no such count of months', written: 1201 }],
    ['half a day', { withinDaysOfBuild: 0.5 }, {}, ON, { kind: 'no such count of days', written: 0.5 }],
    ['no count of months', { withinMonthsOfBuild: NaN }, {}, ON, { kind: 'no such count of months', written: NaN }],
    ['less than none', { withinMonthsOfBuild: -0.5 }, {}, ON, { kind: 'no such count of months', written: -0.5 }],
  ];

  it.each(cases)('%s', (_, range, vehicle, on, problem) => {
    expect(ask(range, vehicle, on)).toEqual({ kind: 'refused', problems: [problem] });
  });

  it('a range from a day to its own month is in order, and so is a car asked about in the month it was built', () => {
    expect(told(ask({ builtFrom: '2012-06-15', builtTo: '2012-06' }, { built: '2012-06-20' }))[0]).toBe('covered');
    expect(told(ask({ until: '2027-01-01' }, { built: '2026-11' }))[0]).toBe('covered');
  });
});
