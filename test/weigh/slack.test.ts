import { describe, expect, test } from 'vitest';
import { readSound } from './weighed.js';

// What a bay plan leaves of time, and how surely it ends when. Days of eight hours from Monday 2026-11-30, Saturdays and
// Sundays closed; sums by hand.

const head = (technicians = 1) => `steelyard 1\nshop "S"\n  rate bench 100.00\n  workday 8 h\n  technicians ${technicians}\nestimate "E"\n  start 2026-11-30\n`;
const option = (...rows: readonly string[]) => `option one "One"\n${rows.map((row) => `  ${row}\n`).join('')}`;
const ready = (text: string, technicians = 1) => readSound(head(technicians) + text).option('one').ready;

/** What every piece leaves, in hours; `!` where it decides the day. */
const slack = (text: string, technicians = 1) => Object.fromEntries(ready(text, technicians).tasks.map(({ task, slack: left, critical }) => [task.title, `${Number(left.toFixed(6))}${critical ? ' !' : ''}`]));
const sure = (text: string, technicians = 1) => ready(text, technicians).byChance.map(({ chance, days, date }) => `${chance} ${days} ${date ?? '-'}`);

describe('slack', () => {
  test('is what the technicians leave who stay with their work, and not only what waits for what', () => {
    // B is done while the seal is on its way, 8 h and 4 h before A can start: one technician has 12 h for it, less its 2 h.
    const text = `labour a "A" 4 h\n  uses seal\nlabour b "B" 2 h\npart seal "Seal" 4.00 new arrives 2 d\n${option('do a, b')}`;
    expect(slack(text)).toEqual({ A: '0 !', B: '14', 'Seal arrives': '0 !' });
    // With nothing to wait for, one after the other: neither leaves any. With two technicians B does.
    expect(slack(option('labour "A" 4 h', 'labour "B" 2 h'))).toEqual({ A: '0 !', B: '0 !' });
    expect(slack(option('labour "A" 4 h', 'labour "B" 2 h'), 2)).toEqual({ A: '0 !', B: '2' });
  });

  test('of things that are on their way at the same time', () => {
    // 8 h and 24 h from the start; the work of 4 h waits for both.
    expect(slack(option('labour "W" 4 h', 'part "P" 5.00 new arrives 1 d', 'part "Q" 5.00 new arrives 3 d'))).toEqual({ W: '0 !', 'P arrives': '16', 'Q arrives': '0 !' });
  });

  test('of what is written first and done last', () => {
    expect(slack(`labour a "A" 4 h\n  after b\nlabour b "B" 2 h\n${option('do a, b', 'labour "C" 1 h')}`, 2)).toEqual({ A: '0 !', B: '0 !', C: '5' });
    expect(slack(`labour a "A" 4 h\n  after b\nlabour b "B" 2 h\n${option('do a, b')}`)).toEqual({ A: '0 !', B: '0 !' });
  });

  test('a piece of no length may stand between those that decide, and does not itself', () => {
    const text = `labour w "W" 4 h\nlabour x "X" 1 h\n  after paper\nsublet paper "Paper" 10.00\n  after w\n${option('do w, x', 'send paper')}`;
    expect(slack(text)).toEqual({ W: '0 !', X: '0 !', 'Paper: away': '0' });
  });
});

describe('how surely it ends when (Malcolm and others, 1959: the normal curve along the critical path)', () => {
  test('a wait by the calendar is as uncertain as its weeks say', () => {
    // Two weeks from Monday are 10 working days, 80 h, from 40 to 120: deviation 80 / 6 = 13.33 h. With 8 h of work 88 h,
    // at 80 % 88 + 0.8416 x 13.33 = 99.2, at 90 % 88 + 1.2816 x 13.33 = 105.1: days 11, 13 and 14 of 8 h.
    expect(sure(option('labour "W" 8 h', 'part "P" 5.00 new arrives 1 / 2 / 3 wk'))).toEqual(['0.5 11 2026-12-14', '0.8 13 2026-12-16', '0.9 14 2026-12-17']);
  });

  test('the work of one technician adds up, that of two does not', () => {
    // One: 30 h, deviation √2 x 2 = 2.83 h; 32.4 and 33.6 h. Two: 15 h, deviation 2 h; 16.7 and 17.6 h.
    const text = option('labour "A" 9 / 15 / 21 h', 'labour "B" 9 / 15 / 21 h');
    expect(sure(text)).toEqual(['0.5 4 2026-12-03', '0.8 5 2026-12-04', '0.9 5 2026-12-04']);
    expect(sure(text, 2)).toEqual(['0.5 2 2026-12-01', '0.8 3 2026-12-02', '0.9 3 2026-12-02']);
  });

  test('what goes on after the vehicle is ready has no say, however uncertain', () => {
    const core = 'part "Pump" 9.00 rebuilt\n    core 5.00\n      assemble 1 / 20 / 60 h';
    expect(sure(option('labour "W" 6 h', core))).toEqual(['0.5 1 2026-11-30', '0.8 1 2026-11-30', '0.9 1 2026-11-30']);
  });

  test('a length beyond any calendar leaves nothing to say of it', () => {
    // Likely 99 999 x 2 h, 25 000 days of 8 h; at most some 10^16 h.
    const { byChance, days, tasks } = ready(option('labour "W" 99999 at 1 / 2 / 99999999999 h'));
    expect([byChance, days.likely.toNumber(), tasks.map(({ slack: left, critical }) => [left, critical])]).toEqual([[], 25_000, [[0, false]]]);
  });
});
