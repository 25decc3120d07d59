import { describe, expect, test } from 'vitest';
import { daysFrom } from '../../../src/service/complete/dates.js';
import { FIRST } from '../../../src/service/complete/order.js';
import { allKinds } from '../../../src/vocabulary/index.js';
import { after, BENCH, cursorIn, labels, TODAY } from './cursor.js';

/** A job with its dates, and an option with named and unnamed lines. */
const JOB = `steelyard 1
shop "Bench"
  rate bench "Bench work" 100.00 usual
estimate "E-7"
  written 2027-03-01
  start 2027-03-15
access out "Engine out"
  remove 5 h
  refit 6 h
labour head "Head" 7 h with out
labour spare "Not done" 1 h
part seal "Seal" 5.85 new
option fix "Fix"
  do head
  fit seal
  labour "Clean the pan" 0.5 h
  part "Used engine, 70 000 mi" 980.00 used
    core 120.00 due 30 d
  part "Gasket \\"B\\"" 4.00 new
`;

const offersAt = (marked: string) => cursorIn(JOB + marked).offers.map(({ label, detail }) => [label, detail]);

describe('days of the job', () => {
  test('today comes first, then the days that the job has already', () => {
    expect(offersAt('quoted 900.00 for fix on $0')).toEqual([['today', TODAY], ['2027-03-01', 'estimate written'], ['2027-03-15', 'estimate start']]);
    expect(offersAt('quoted 900.00 on 2027-03-02\nauthorised 900.00 on $0').map(([label]) => label)).toEqual(['today', '2027-03-01', '2027-03-15', '2027-03-02']);
  });

  test.each([
    ['authorised 900.00 for fix on $0', 'authorised 900.00 for fix on 2027-03-09'], ['started on $0', 'started on 2027-03-09'], ['closed for fix on $0', 'closed for fix on 2027-03-09'],
    ['closed for fix on $0  billed 900.00', 'closed for fix on 2027-03-09  billed 900.00'], ['quoted 900.00\n  on $0', '  on 2027-03-09'], ['started on 2027-0$03-04', 'started on 2027-03-09'],
  ])('%j takes today', (marked, line) => {
    expect(after(JOB + marked, 'today')).toBe(line);
  });

  test('a line’s own day is not offered to it, and on a date only days are', () => {
    expect(labels(`${JOB}authorised 900.00 for fix on 2027-03$0-04`)).toEqual(['today', '2027-03-01', '2027-03-15']);
    expect(labels('steelyard 1\nestimate "E"\n  written 2027-$003-01')).toEqual(['today']);
  });

  test('the lead word brings today along', () => {
    expect(after('steelyard 1\nestimate "E"\n  $0', 'written')).toBe('  written 2027-03-09');
    expect(after(`${JOB}authorised 900.00 $0`, 'on')).toBe('authorised 900.00 on 2027-03-09');
  });

  test('and so do whole records, with what they are for', () => {
    expect(after(`${JOB}$0`, 'started')).toBe('started on 2027-03-09');
    expect(after(`${JOB}$0`, 'quoted')).toBe('quoted 5858.59 for fix on 2027-03-09');
    expect(after(`${JOB}$0`, 'authorised')).toBe('authorised 5858.59 for fix on 2027-03-09');
    expect(after(`${JOB}$0`, 'closed')).toBe('closed for fix on 2027-03-09');
    expect(after('steelyard 1\n$0', 'closed')).toBe('closed on 2027-03-09');
  });

  test('an example’s later days fall on the days of the week that they had, and never before the first', () => {
    // 2026-11-24 is a Tuesday and 2026-11-30 a Monday (ISO 8601; by the calendar that the editor’s platform has).
    const weekday = (iso: string) => new Date(`${iso}T00:00:00Z`).getUTCDay();
    for (let day = 1; day <= 28; day++) {
      const today = `2027-02-${String(day).padStart(2, '0')}`;
      const moved = daysFrom(today, ['2026-11-24', '2026-11-30']);
      const start = moved.get('2026-11-30') as string;
      expect([moved.get('2026-11-24'), weekday(start)]).toEqual([today, weekday('2026-11-30')]);
      expect(start > today).toBe(true);
    }
    expect(after('steelyard 1\n$0', 'estimate …')).toContain('  written 2027-03-09\n  start 2027-03-15\n');
  });

  test('nothing is offered where nobody says which day it is but what the file has', () => {
    const { service } = cursorIn(`${JOB}started on $0`);
    expect(service.completions('/shop/estimate.yard', JOB.length + 'started on '.length).map(({ label }) => label)).toEqual(['2027-03-01', '2027-03-15']);
  });
});

describe('lines of a closing', () => {
  const below = (line: string) => `closed for fix on 2027-03-20\n  ${line}`;

  test('name what the option has, by its title where it has no name', () => {
    expect(offersAt(below('clocked $0'))).toEqual([['head', 'Head'], ['Clean the pan', 'by its title, having no name'], ['out', 'Engine out']]);
    expect(labels(JOB + below('paid $0'))).toEqual(['seal', 'Used engine, 70 000 mi', 'Gasket "B"']);
    expect(labels(JOB + below('credited $0'))).toEqual(['Used engine, 70 000 mi']);
  });

  test.each([
    ['clocked $0', 'head', '  clocked head'], ['clocked h$0 2 h', 'head', '  clocked head 2 h'], ['clocked $0', 'Clean the pan', '  clocked "Clean the pan"'],
    ['paid $0', 'Gasket "B"', '  paid "Gasket \\"B\\""'], ['paid "$0', 'Used engine, 70 000 mi', '  paid "Used engine, 70 000 mi"'], ['paid "Us$0"', 'Used engine, 70 000 mi', '  paid "Used engine, 70 000 mi"'],
    ['paid "Us$0 980.00', 'Used engine, 70 000 mi', '  paid "Used engine, 70 000 mi" 980.00'], ['$0', 'credited', '  credited "Used engine, 70 000 mi" 150.00'], ['$0', 'paid', '  paid seal 1290.00'],
  ])('%j takes %j', (line, label, wanted) => {
    expect(after(JOB + below(line), label)).toBe(wanted);
  });

  test('and nothing twice', () => {
    expect(labels(JOB + below('clocked head 8 h\n  clocked "Clean the pan" 0.4 h\n  clocked $0'))).toEqual(['out']);
    expect(labels(JOB + below('clocked head$0 8 h\n  clocked "Clean the pan" 0.4 h'))).toEqual(['head', 'out']);
  });

  test('with no option said, all names are offered; behind a title none is', () => {
    expect(labels(`${JOB}closed on 2027-03-20\n  clocked $0`)).toEqual(['head', 'spare', 'out']);
    expect(labels(JOB + below('paid "Seal" $0'))).toEqual([]);
  });

  test('the option may stand on a line of its own', () => {
    expect(labels(`${JOB}closed on 2027-03-20\n  for fix\n  credited $0`)).toEqual(['Used engine, 70 000 mi']);
  });
});

describe('the order of what is offered', () => {
  test('is that of writing: what it takes and why, then what it uses, and rarer things behind', () => {
    expect(labels(`${BENCH}labour x "X"\n  $0`).slice(0, 6)).toEqual(['takes', 'because', 'uses', 'needs', 'class', 'caution']);
    expect(labels(`${BENCH}authorised 900.00 $0`).slice(0, 3)).toEqual(['for', 'on', 'by']);
    expect(labels(`${BENCH}authorised 900.00\n  $0`).slice(0, 3)).toEqual(['for', 'on', 'by']);
  });

  test('has what could name nothing yet at its end, and says so', () => {
    const { offers } = cursorIn('steelyard 1\noption x "X"\n  $0');
    const waiting = offers.filter(({ detail }) => detail?.startsWith('there is no ') === true);
    expect(waiting.map(({ label, detail }) => `${label}: ${detail ?? ''}`)).toEqual([
      'do: there is no labour line yet', 'fit: there is no part line yet', 'send: there is no sublet line yet', 'charge: there is no fee line yet', 'because: there is no finding line yet']);
    expect(offers.slice(-waiting.length)).toEqual(waiting);
  });

  test('a name for a line that is still to be written is never the line’s own', () => {
    expect(after('steelyard 1\nlabour pump "Pump" 2 h\n  $0', 'needs')).toBe('  needs pump-2');
  });

  test('lists only words that those lines have', () => {
    for (const [kind, words] of FIRST) {
      const known = [...kind.leads.keys(), ...kind.children.map(({ word }) => word)];
      expect(words.filter((word) => !known.includes(word)), kind.word).toEqual([]);
      expect(allKinds).toContain(kind);
    }
  });
});
