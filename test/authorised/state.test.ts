import { describe, expect, test } from 'vitest';
import { stateOf, type Estimate, type State } from '../../src/estimate/index.js';
import { read } from '../weigh/weighed.js';

const JOB = `steelyard 1
shop "S"
  rate bench 100.00
estimate "Van"
  written 2026-11-01
VALID
labour strip "Strip" 2 h
option repair "Repair"
  labour "Head" 8 h
  do strip
option used "Used engine"
  labour "Swap" 12 h
  do strip
stage tear-down "Take it apart"
  do strip
`;

function jobWith(lines: readonly string[], valid = '  valid 14 d'): Estimate {
  return read(`${JOB.replace('VALID\n', valid === '' ? '' : `${valid}\n`)}${lines.join('\n')}\n`).resolved.estimate;
}

function stateFor(lines: readonly string[], today: string, valid?: string): State {
  return stateOf(jobWith(lines, valid), today);
}

const RECORDS = {
  quoted: 'quoted 800.00 for repair on 2026-11-05',
  authorised: 'authorised 800.00 for repair on 2026-11-10',
  stage: 'authorised 200.00 for tear-down on 2026-11-04',
  started: 'started on 2026-11-12',
  closed: 'closed for repair on 2026-11-20',
} as const;
const DAYS = { quoted: '2026-11-05', authorised: '2026-11-10', stage: '2026-11-04', started: '2026-11-12', closed: '2026-11-20' } as const;
type Word = keyof typeof RECORDS;
const words = Object.keys(RECORDS) as Word[];

describe('every combination of records, before, between and after their days', () => {
  const combinations = Array.from({ length: 2 ** words.length }, (_, bits) => words.filter((_, i) => (bits & (1 << i)) !== 0));
  const today = ['2026-11-02', '2026-11-05', '2026-11-11', '2026-11-12', '2026-11-16', '2026-11-19', '2026-11-20', '2026-12-31'];

  test.each(combinations.map((records) => [records.join(' + ') || 'nothing', records] as const))('%s', (_, records) => {
    // The order of the lines says nothing.
    const jobs = [records, [...records].reverse()].map((lines) => jobWith(lines.map((word) => RECORDS[word])));
    for (const day of today) {
      // The order of the states, written out once more: what has not happened by that day doesn't count.
      const has = (word: Word) => records.includes(word) && DAYS[word] <= day;
      const ends = has('quoted') ? '2026-11-19' : '2026-11-15'; // 14 days after the 5th, and after the 1st
      // A stage holds until something else is quoted after it.
      const held = has('authorised') || (has('stage') && !has('quoted'));
      const wanted = has('closed') ? 'closed' : has('started') ? 'in-work' : held ? 'authorised' : ends < day ? 'expired' : has('quoted') ? 'quoted' : 'draft';
      const since = { closed: DAYS.closed, 'in-work': DAYS.started, authorised: has('authorised') ? DAYS.authorised : DAYS.stage, quoted: DAYS.quoted, draft: '2026-11-01', expired: has('quoted') ? '2026-11-20' : '2026-11-16' }[wanted];
      const option = wanted === 'closed' || has('authorised') || has('quoted') ? 'repair' : has('stage') ? 'tear-down' : undefined;
      for (const job of jobs) expect(stateOf(job, day), day).toMatchObject({ state: wanted, since, option });
    }
  });
});

describe('details', () => {
  test('the last day still holds; months and weeks run by the calendar', () => {
    expect(stateFor([], '2026-11-15').state).toBe('draft');
    expect(stateFor([], '2026-11-16').state).toBe('expired');
    expect(stateFor([], '2026-11-15', '  valid 2 wk')).toMatchObject({ state: 'draft', validUntil: '2026-11-15' });
    expect(stateFor(['quoted 1.00 for used on 2027-01-31'], '2027-02-28', '  valid 1 mo')).toMatchObject({ state: 'quoted', validUntil: '2027-02-28', option: 'used' });
    expect(stateFor([], '2099-01-01', '')).toMatchObject({ state: 'draft', validUntil: undefined });
  });

  test('a later quote starts anew, and an authorisation never runs out', () => {
    expect(stateFor(['quoted 1.00 for repair on 2026-11-05', 'quoted 1.00 for used on 2026-12-01'], '2026-12-10')).toMatchObject({ state: 'quoted', since: '2026-12-01', option: 'used' });
    expect(stateFor(['quoted 1.00 for repair on 2026-11-05', 'authorised 1.00 for repair on 2026-11-06'], '2030-01-01').state).toBe('authorised');
  });

  test('it counts from the first authorisation, and names the option authorised last', () => {
    expect(stateFor(['authorised 2.00 for used on 2026-11-09', 'authorised 1.00 for repair on 2026-11-06'], '2026-11-10')).toEqual({ state: 'authorised', since: '2026-11-06', option: 'used', validUntil: undefined });
  });

  test('what can’t be read, or is for what is gone, is no authorisation', () => {
    expect(stateFor(['authorised 1.00 for gone on 2026-11-06'], '2026-11-10').state).toBe('draft');
  });

  test('records without a day have happened; closed for nothing is closed', () => {
    expect(stateFor(['started'], '2026-11-10')).toMatchObject({ state: 'in-work', since: undefined });
    expect(stateFor(['closed on 2026-11-09'], '2026-11-10')).toMatchObject({ state: 'closed', since: '2026-11-09', option: undefined });
  });

  test('an empty file is a draft', () => {
    expect(stateOf(read('steelyard 1\n').resolved.estimate, '2026-11-10')).toEqual({ state: 'draft', since: undefined, option: undefined, validUntil: undefined });
  });
});
