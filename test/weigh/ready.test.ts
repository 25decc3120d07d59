import { describe, expect, test } from 'vitest';
import { readSound } from './weighed.js';

// When it is ready, how long the bay is blocked and how much of that nobody works. Days of eight hours from Monday 2026-11-30; sums by hand.

const head = (technicians = 1) => `steelyard 1\nshop "S"\n  rate bench 100.00\n  workday 8 h\n  technicians ${technicians}\n`;
const ESTIMATE = 'estimate "E"\n  start 2026-11-30\n';
const option = (...rows: readonly string[]) => `option one "One"\n${rows.map((row) => `  ${row}\n`).join('')}`;

function ready(text: string, technicians = 1) {
  return readSound(head(technicians) + text).option('one').ready;
}

function told(text: string, technicians = 1) {
  const { days, waiting, bay, date, latest, finish, tasks } = ready(text, technicians);
  const points = ({ low, likely, high, ranged }: typeof days) => (ranged ? [low, likely, high] : [likely]).map((point) => point.toFixed()).join(' / ');
  return { days: points(days), waiting: points(waiting), bay: points(bay), date, latest, finish, tasks: tasks.map(({ task: { title }, start, end, technician, slack, critical, from, to }) => `${title} ${start}-${end}${technician === undefined ? '' : ` by ${technician}`} slack ${Number(slack.toFixed(6))}${critical ? ' decides' : ''} ${from ?? '-'} ${to ?? '-'}`) };
}

describe('one after the other', () => {
  test('8 h are one day, 8.5 h two; the day is that of the last hour', () => {
    expect(told(`${ESTIMATE}${option('labour "W" 8 h')}`)).toMatchObject({ days: '1', bay: '1', waiting: '0', date: '2026-11-30', latest: '2026-11-30' });
    expect(told(`${ESTIMATE}${option('labour "W" 8 h', 'labour "V" 0.5 h')}`)).toMatchObject({ days: '2', bay: '2', waiting: '0', date: '2026-12-01', latest: '2026-12-01', finish: 8.5 });
  });

  test('nothing to do takes no day', () => {
    expect(told(`${ESTIMATE}${option('part "P" 5.00 new')}`)).toMatchObject({ days: '0', bay: '0', waiting: '0', date: '2026-11-30', tasks: [] });
    const { days } = ready(option('part "P" 5.00 new'));
    expect(days.step).toEqual({ kind: 'found', how: 'There is nothing to do or to wait for.' });
  });

  test('without a day to start from there are days, and no dates', () => {
    expect(told(option('labour "W" 9 h'))).toMatchObject({ days: '2', date: undefined, latest: undefined, tasks: ['W 0-9 by 1 slack 0 decides - -'] });
  });
});

describe('waiting', () => {
  test('with the vehicle in the bay: a day of work, then a part for two days, then closing up', () => {
    const text = `${ESTIMATE}access up "Up"\n  remove 8 h\n  refit 4 h\nlabour w "W" 4 h with up\n  uses seal\npart seal "Seal" 5.00 new arrives 3 d\n${option('do w')}`;
    // Removed on Monday; the part is there on Thursday; 4 h and 4 h end on Thursday. Two days of 24 h in which nobody works.
    expect(told(text)).toEqual({
      days: '4', waiting: '2', bay: '4', date: '2026-12-03', latest: '2026-12-03', finish: 32,
      tasks: ['Up: remove 0-8 by 1 slack 16 2026-11-30 2026-11-30', 'W 24-28 by 1 slack 0 decides 2026-12-03 2026-12-03', 'Seal arrives 0-24 slack 0 decides 2026-11-30 2026-12-02', 'Up: refit 28-32 by 1 slack 0 decides 2026-12-03 2026-12-03'],
    });
  });

  test('before the first work the bay is free', () => {
    // The part arrives on Wednesday evening; 12 h from Thursday.
    expect(told(`${ESTIMATE}${option('labour "W" 12 h', 'part "P" 5.00 new arrives 3 d')}`)).toMatchObject({ days: '5', bay: '2', waiting: '0', date: '2026-12-04' });
  });

  test('at the end counts, too', () => {
    const text = `${ESTIMATE}labour w "W" 4 h\n${option('do w', 'sublet "Wash" 20.00 back in 1 d after w')}`;
    // 4 h, then away for a day, to Tuesday noon.
    expect(told(text)).toMatchObject({ days: '2', bay: '2', waiting: '1', finish: 12 });
  });
});

describe('several technicians', () => {
  test('work at the same time, and have numbers from 1', () => {
    const { tasks, days, finish } = told(`${ESTIMATE}${option('labour "A" 6 h', 'labour "B" 4 h')}`, 2);
    // Who does which is nobody's matter.
    expect([days, finish, tasks.map((row) => row.replace(/ by \d| \d{4}.*/g, '')), tasks.map((row) => / by (\d)/.exec(row)?.[1]).sort()]).toEqual(['1', 6, ['A 0-6 slack 0 decides', 'B 0-4 slack 2'], ['1', '2']]);
  });

  test('one does one thing after the other, and each of them decides the day', () => {
    const { tasks } = told(`${ESTIMATE}${option('labour "A" 6 h', 'labour "B" 4 h')}`);
    expect(tasks.map((row) => row.replace(/ \d{4}.*/, '')).sort()).toEqual([expect.stringMatching(/^A .* by 1 slack 0 decides$/), expect.stringMatching(/^B .* by 1 slack 0 decides$/)]);
  });

  test('are told with the figure', () => {
    const how = (technicians: number) => ready(`${ESTIMATE}${option('labour "A" 6 h')}`, technicians).days.step;
    expect([how(1), how(2)].map((step) => (step.kind === 'found' ? /with (.*);/.exec(step.how)?.[1] : ''))).toEqual(['one technician', '2 technicians']);
  });
});

describe('times of three points', () => {
  test('the earliest and the latest day, and the date of the latest', () => {
    expect(told(`${ESTIMATE}${option('labour "W" 4 / 8 / 17 h')}`)).toMatchObject({ days: '1 / 1 / 3', date: '2026-11-30', latest: '2026-12-02' });
    expect(told(`${ESTIMATE}${option('labour "W" 8 / 9 / 10 h')}`)).toMatchObject({ days: '1 / 2 / 2', date: '2026-12-01', latest: '2026-12-01' });
    // All on one day: nothing to tell.
    expect(told(`${ESTIMATE}${option('labour "W" 4 / 5 / 6 h')}`)).toMatchObject({ days: '1', latest: '2026-11-30' });
  });

  test('how sure: by the normal curve, 50 % is the mean of three points (Malcolm and others, 1959)', () => {
    // Mean (4 + 4 x 8 + 18) / 6 = 9 h, deviation 14 / 6 = 2.33 h: 9 h is day 2; at 80 % 9 + 0.8416 x 2.33 = 10.96 h; at 90 % 9 + 1.2816 x 2.33 = 11.99 h.
    const found = ready(`${ESTIMATE}${option('labour "W" 4 / 8 / 18 h')}`).byChance;
    expect(found.map(({ chance, days, date }) => [chance, days, date])).toEqual([[0.5, 2, '2026-12-01'], [0.8, 2, '2026-12-01'], [0.9, 2, '2026-12-01']]);
    // Mean 15 h and deviation 3 h: 15, 17.5 and 18.8 h.
    expect(ready(`${ESTIMATE}${option('labour "W" 6 / 15 / 24 h')}`).byChance.map(({ days, date }) => [days, date])).toEqual([[2, '2026-12-01'], [3, '2026-12-02'], [3, '2026-12-02']]);
  });
});

test('putting an old core together holds up nothing', () => {
  const text = `${ESTIMATE}${option('labour "W" 6 h', 'part "Pump" 9.00 rebuilt\n    core 5.00\n      assemble 20 h')}`;
  const { days, date, tasks } = told(text);
  expect([days, date, tasks.find((row) => row.startsWith('Pump'))]).toEqual(['1', '2026-11-30', expect.stringContaining('slack 0 2026') as string]);
});
