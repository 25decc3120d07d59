import { describe, expect, test } from 'vitest';
import { coveragesOf } from '../../../src/weigh/decide/coverage.js';
import { coveredSentence } from '../../../src/report/decision-words.js';
import { read } from '../weighed.js';

interface Told {
  readonly vehicle?: string;
  readonly coverage?: string;
  readonly header?: string;
  readonly options?: string;
}

const DATED = 'estimate "E"\n  start 2026-11-30\n';

function covered({ vehicle = '', coverage = '', header = '', options = '' }: Told) {
  const text = `steelyard 1\n${header}shop "Invented Bay"\n  rate bench 100.00\nvehicle "Van"\n${vehicle}${options}coverage "Letter to owners" recall\n${coverage}`;
  const [one] = coveragesOf(read(text).resolved.estimate);
  if (one === undefined) throw new Error('no coverage');
  return one;
}

describe('what a coverage says of the vehicle is held against it', () => {
  test.each<[string, Told, string]>([
    ['built after the last month', { vehicle: '  built 2013-03\n', coverage: '  built to 2013-02\n' }, 'not covered'],
    ['built in the last month', { vehicle: '  built 2013-02-28\n', coverage: '  built to 2013-02\n' }, 'covered'],
    ['a month of building is not known to be before a day in it', { vehicle: '  built 2013-02\n', coverage: '  built to 2013-02-15\n' }, 'unknown'],
    ['an odometer that nobody read', { coverage: '  up to 120000 mi\n' }, 'unknown'],
    ['an odometer at the most', { vehicle: '  odometer 120000 mi\n', coverage: '  up to 120000 mi\n' }, 'covered'],
    ['a year that nobody knows', { coverage: '  years 2012\n' }, 'unknown'],
    ['one of several years', { vehicle: '  model year 2013\n', coverage: '  years 2012, 2013\n' }, 'covered'],
    ['none of several years', { vehicle: '  model year 2014\n', coverage: '  years 2012, 2013\n' }, 'not covered'],
    ['no condition at all: nothing to hold it against', {}, 'unknown'],
    ['months after building, by the date of writing', { vehicle: '  built 2026-05-30\n', coverage: '  within 6 mo\n', header: 'estimate "E"\n  written 2026-11-30\n' }, 'covered'],
    ['days after building, which make no whole number of months', { vehicle: '  built 2026-09-01\n', coverage: '  within 90 d\n', header: DATED }, 'covered'],
    ['one day more', { vehicle: '  built 2026-08-31\n', coverage: '  within 90 d\n', header: DATED }, 'not covered'],
    ['weeks of seven days', { vehicle: '  built 2025-12-01\n', coverage: '  within 52 wk\n', header: DATED }, 'covered'],
    ['one day more than those', { vehicle: '  built 2025-11-30\n', coverage: '  within 52 wk\n', header: DATED }, 'not covered'],
    // Built on 30 September: a month later is 30 October, and half of the 31 days from there on are 15.5.
    ['a month and a half, which is not cut down to one', { vehicle: '  built 2026-09-30\n', coverage: '  within 1.5 mo\n', header: 'estimate "E"\n  start 2026-11-14\n' }, 'covered'],
    ['one day more than that', { vehicle: '  built 2026-09-30\n', coverage: '  within 1.5 mo\n', header: 'estimate "E"\n  start 2026-11-15\n' }, 'not covered'],
    ['a hundred years at most', { vehicle: '  built 1926-11-30\n', coverage: '  within 2000 mo\n', header: DATED }, 'covered'],
    ['and so many days', { vehicle: '  built 1927-01-01\n', coverage: '  within 99999 d\n', header: DATED }, 'covered'],
    ['one month more', { vehicle: '  built 2026-05-30\n', coverage: '  within 5 mo\n', header: DATED }, 'not covered'],
  ])('%s', (_, told, answer) => {
    expect(covered(told).answer).toBe(answer);
  });

  test('without a day it is not said to hold where a day is asked for', () => {
    expect(covered({ vehicle: '  built 2026-05-30\n', coverage: '  within 6 mo\n' })).toMatchObject({ answer: 'unknown', on: undefined });
    expect(covered({ coverage: '  until 2099-01-01\n' })).toMatchObject({ answer: 'unknown', on: undefined });
    expect(covered({ vehicle: '  model year 2014\n', coverage: '  years 2012\n  until 2099-01-01\n' }).answer).toBe('not covered');
    // What holds besides does not make up for it.
    for (const asked of ['  until 2099-01-01\n', '  within 600 mo\n']) expect(covered({ vehicle: '  model year 2012\n  built 2012-05-30\n', coverage: `  years 2012\n${asked}` }).answer, asked).toBe('unknown');
    expect(covered({ vehicle: '  model year 2012\n', coverage: '  years 2012\n' })).toMatchObject({ answer: 'covered', on: undefined });
  });

  test('what is written against itself, or without a unit, tells nothing', () => {
    expect(covered({ vehicle: '  built 2027-01\n', coverage: '  years 2012\n', header: DATED })).toMatchObject({ answer: 'unknown', reasons: [] });
    expect(covered({ vehicle: '  odometer 100000\n', coverage: '  up to 120000 mi\n' })).toMatchObject({ answer: 'unknown', reasons: [{ condition: 'distance', missing: 'odometer' }] });
  });

  test('it is told when months and days after building end', () => {
    const sentence = (within: string) => coveredSentence(covered({ vehicle: '  built 2026-08-31\n', coverage: `  within ${within}\n`, header: DATED }));
    expect([sentence('90 d'), sentence('2 mo'), sentence('1.5 mo')]).toEqual([expect.stringContaining('it ends 90 days after building, on 2026-11-29'), expect.stringContaining('it ends 2 months after building, on 2026-10-31'), expect.stringContaining('it ends 1.5 months after building, on 2026-10-15')]);
  });

  test('the day is the one on which work starts, or else the one on which it was written', () => {
    expect(covered({ header: 'estimate "E"\n  written 2026-11-20\n  start 2026-11-30\n' }).on).toBe('2026-11-30');
    expect(covered({ header: 'estimate "E"\n  written 2026-11-20\n' }).on).toBe('2026-11-20');
  });
});

describe('what it would pay for', () => {
  const options = 'labour head "Rear head" 8 h\noption rebuild "Rebuild"\n  do head\n  labour "Dress it" 1 h\noption used "Used engine"\n  labour "Swap" 9 h\n';

  test.each([
    ['  covers head\n', ['rebuild']],
    ['  covers used\n', ['used']],
    ['  covers head, used\n', ['rebuild', 'used']],
    ['', []],
  ])('%j', (coverage, names) => {
    expect(covered({ coverage, options }).options).toEqual(names);
  });
});

test('a reason that several conditions share is told once', () => {
  const says = coveredSentence(covered({ coverage: '  built from 2014-01\n  built to 2015-02\n  within 36 mo\n', header: DATED }));
  expect(says.split('when it was built is not written')).toHaveLength(2);
});
