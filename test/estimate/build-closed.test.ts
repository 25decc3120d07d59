import { describe, expect, test } from 'vitest';
import type { Closed } from '../../src/estimate/index.js';
import { resolved, told, wordsOf } from './estimated.js';

const JOB = `steelyard 1
shop "S"
  rate r 100.00
  fee disposal "Disposal" 5.00
estimate "E"
  written 2026-11-24
access lifted "Lift the engine"
  remove 2 h
labour swap "Swap the engine" 5 h with lifted
  chance "Bolts break" 10%
    labour "Drill them out" 1 h
    part "Bolts" 8 at 2.00 new
labour other "Something else" 1 h
part engine "Used engine" 1650.00 used
  core 200.00
    assemble 1 h
part pair "Pair of injectors" 2 at 90.00 rebuilt
  core 50.00
part belt "Belt" 20.00 new
option used "Fit a used engine"
  do swap
  fit engine, pair
  labour "Dress it" 2 h
option other-way "Another way"
  do other
  fit belt
started on 2026-11-30
`;
const closing = (head: string, ...lines: readonly string[]) => resolved(`${JOB}closed ${head}\n${lines.map((line) => `  ${line}\n`).join('')}`);
const DONE = 'for used on 2026-12-09';
const saysOf = (...lines: readonly string[]) => told(closing(DONE, ...lines));
const titlesOf = (list: Closed['clocked'] | Closed['paid'] | undefined) => list?.map(({ line, amount }) => [line === undefined ? undefined : 'title' in line ? line.title : 'core', amount.likely.toFixed()]);

describe('what was clocked, paid and credited', () => {
  test('is found among the lines of the option that was done: by name, or by title', () => {
    const { estimate: { closed } } = closing(DONE, 'clocked swap 6 h', 'clocked "Dress it" 2.5 h', 'clocked lifted 3 h', 'paid engine 1600.00', 'paid "Disposal" 4.00', 'credited engine 150.00', 'note "Late"', 'note');
    expect(closed?.option?.name).toBe('used');
    expect(closed?.on).toBe('2026-12-09');
    expect(titlesOf(closed?.clocked)).toEqual([['Swap the engine', '6'], ['Dress it', '2.5'], ['Lift the engine', '3']]);
    expect(titlesOf(closed?.paid)).toEqual([['Used engine', '1600'], ['Disposal', '4']]);
    expect(titlesOf(closed?.credited)).toEqual([['Used engine', '150']]);
    expect(closed?.notes).toEqual(['Late']);
    expect(saysOf('clocked swap 6 h', 'clocked "Dress it" 2.5 h', 'clocked lifted 3 h', 'paid engine 1600.00', 'paid "Disposal" 4.00', 'credited engine 150.00')).toEqual([]);
  });

  test('may be what a chance brought, and putting a core together', () => {
    expect(saysOf('clocked "Drill them out" 1 h', 'paid "Bolts" 16.00', 'clocked "Used engine: put the core together" 1.5 h')).toEqual([]);
    expect(titlesOf(closing(DONE, 'clocked "Used engine: put the core together" 1.5 h').estimate.closed?.clocked)).toEqual([['core', '1.5']]);
  });

  test('of another option is told, with a near name', () => {
    expect(saysOf('clocked other 1 h')).toEqual([['not-in-option', 'other']]);
    expect(saysOf('paid belt 18.00')).toEqual([['not-in-option', 'belt']]);
    expect(saysOf('clocked "Dress itt" 1 h')).toEqual([['not-in-option', '"Dress itt"']]);
    expect(wordsOf(closing(DONE, 'clocked "Dress itt" 1 h'), 'not-in-option')).toContain('Did you mean Dress it?');
    expect(titlesOf(closing(DONE, 'clocked other 1 h').estimate.closed?.clocked)).toEqual([[undefined, '1']]);
  });

  test('by a name that nothing has is told as that alone', () => {
    expect(saysOf('clocked swop 1 h')).toEqual([['unknown-name', 'swop']]);
  });

  test('stands once for each line; the message adds them up', () => {
    expect(saysOf('clocked swap 6 h', 'clocked swap 30 min')).toEqual([['actual-twice', 'clocked swap 30 min', 'clocked swap 6 h']]);
    const sum = (...lines: readonly string[]) => wordsOf(closing(DONE, ...lines), 'actual-twice');
    expect(sum('clocked swap 6 h', 'clocked swap 30 min')).toContain('clocked swap 6.5 h');
    expect(sum('clocked swap 40 min', 'clocked swap 5 min')).toContain('clocked swap 45 min');
    expect(sum('clocked swap 6 h', 'clocked swap 10 min')).toContain('clocked swap 6.17 h');
    expect(sum('paid engine 1600.00', 'paid engine 0.5')).toContain('paid engine 1600.50');
    expect(sum('paid "Drums" 1.00', 'paid "Drums" 2.00')).toContain('3.00');
    expect(closing(DONE, 'clocked swap 6 h', 'clocked swap 30 min').estimate.closed?.clocked).toHaveLength(1);
    expect(saysOf('paid "Drums" 1.00', 'paid "Pipes" 2.00').map(([code]) => code)).toEqual(['not-in-option', 'not-in-option']);
  });

  test('with one title for two lines is first the one, then the other', () => {
    const text = JOB.replace('  labour "Dress it" 2 h\n', '  labour "Dress it" 2 h\n  labour "Dress it" 3 h\n');
    const twice = resolved(`${text}closed ${DONE}\n  clocked "Dress it" 1 h\n  clocked "Dress it" 2 h\n`);
    expect(told(twice)).toEqual([]);
    expect(new Set(twice.estimate.closed?.clocked.map(({ line }) => line)).size).toBe(2);
    expect(told(resolved(`${text}closed ${DONE}\n${'  clocked "Dress it" 1 h\n'.repeat(3)}`)).map(([code]) => code)).toEqual(['actual-twice']);
  });

  test('is one figure', () => {
    expect(saysOf('clocked swap 5 / 6 / 7 h')).toEqual([['actual-in-three', '5 / 6 / 7 h']]);
    expect(wordsOf(closing(DONE, 'clocked swap 5 / 6.50 / 7 h'), 'actual-in-three')).toContain('Write 6.50 h.');
    expect(wordsOf(closing(DONE, 'paid engine 5 / 6.50 / 7'), 'actual-in-three')).toContain('Write 6.50.');
    expect(saysOf('clocked swap 5 / 5 / 6 h')).toEqual([['actual-in-three', '5 / 5 / 6 h']]);
    expect(saysOf('clocked swap 5 / 6 / 6 h')).toEqual([['actual-in-three', '5 / 6 / 6 h']]);
    expect(saysOf('clocked swap 6 / 6 / 6 h')).toEqual([]);
    expect(saysOf('billed 1 / 2 / 3')).toEqual([['actual-in-three', '1 / 2 / 3']]);
  });

  test('needs a line and a figure, and what can’t be read is told once', () => {
    expect(saysOf('clocked 5 h')).toEqual([['something-missing', 'clocked 5 h']]);
    expect(saysOf('clocked')).toEqual([['something-missing', 'clocked']]);
    expect(wordsOf(closing(DONE, 'clocked swap'), 'amount-missing')).toContain('clocked pump 2.1 h');
    expect(saysOf('clocked swap')).toEqual([['amount-missing', 'clocked swap']]);
    expect(saysOf('paid "Used engine"')).toEqual([['amount-missing', 'paid "Used engine"']]);
    expect(saysOf('clocked swap 5h')).toEqual([['glued-unit', '5h']]);
    expect(closing(DONE, 'clocked 5 h', 'clocked swap', 'paid "Used engine"').estimate.closed?.clocked).toEqual([]);
  });
});

describe('core money that came back', () => {
  test('can’t be more than was charged, piece by piece', () => {
    expect(saysOf('credited engine 200.00')).toEqual([]);
    expect(saysOf('credited engine 200.01')).toEqual([['credited-over', '200.01']]);
    expect(wordsOf(closing(DONE, 'credited engine 200.01'), 'credited-over')).toContain('Used engine is 200.00');
    expect(saysOf('credited pair 100.00')).toEqual([]);
    expect(saysOf('credited pair 100.01')).toEqual([['credited-over', '100.01']]);
  });

  test('for a part without a core is told', () => {
    expect(saysOf('credited "Bolts" 1.00')).toEqual([['credited-over', '1.00']]);
    expect(wordsOf(closing(DONE, 'credited "Bolts" 1.00'), 'credited-over')).toContain('Bolts has no core charge');
  });

  test('for a part of another option is told as that alone', () => {
    expect(saysOf('credited belt 1.00')).toEqual([['not-in-option', 'belt']]);
    // Of another kind than can be paid: that is one message, of the name.
    expect(saysOf('paid other 1.00')).toEqual([['unknown-name', 'other']]);
  });
});

describe('the day', () => {
  test('is needed', () => {
    expect(told(closing('for used'))).toEqual([['closed-when', 'closed for used']]);
    expect(told(closing('for used on 31/12/2026')).map(([code]) => code)).toEqual(['no-such-date']);
  });

  test('is not before work started, nor before the estimate was written', () => {
    expect(told(closing('for used on 2026-11-30'))).toEqual([]);
    expect(told(closing('for used on 2026-11-29'))).toEqual([['closed-before', '2026-11-29']]);
    expect(wordsOf(closing('for used on 2026-11-29'), 'closed-before')).toContain('before work started (2026-11-30)');
    const unstarted = (day: string) => resolved(`${JOB.replace('started on 2026-11-30\n', '')}closed for used on ${day}\n`);
    expect(told(unstarted('2026-11-24'))).toEqual([]);
    expect(told(unstarted('2026-11-23'))).toEqual([['closed-before', '2026-11-23']]);
    const someDay = (day: string) => resolved(`${JOB.replace('started on 2026-11-30\n', 'started\n')}closed for used on ${day}\n`);
    expect(told(someDay('2026-11-23')).map(([code]) => code)).toEqual(['agreed-unclear', 'closed-before']);
    expect(wordsOf(unstarted('2026-11-23'), 'closed-before')).toContain('before the estimate was written (2026-11-24)');
  });
});

describe('a job closed for no option', () => {
  test('is no repair, and needs no word', () => {
    expect(told(closing('on 2026-12-09'))).toEqual([]);
    expect(closing('on 2026-12-09').estimate.closed?.option).toBeUndefined();
  });

  test('has nothing that was clocked, paid or credited', () => {
    for (const line of ['clocked "Looked at it" 1 h', 'paid "Used engine" 1.00', 'credited "Used engine" 1.00']) expect(told(closing('on 2026-12-09', line))).toEqual([['closed-for-nothing', 'closed on 2026-12-09']]);
    expect(told(closing('on 2026-12-09', 'note "Towed away"'))).toEqual([]);
  });

  test('that nothing has is told as that alone', () => {
    expect(told(closing('for usde on 2026-12-09', 'clocked "Dress it" 1 h'))).toEqual([['unknown-name', 'usde']]);
    expect(closing('for usde on 2026-12-09', 'clocked "Dress it" 1 h').estimate.closed?.clocked).toMatchObject([{ says: 'Dress it', line: undefined }]);
  });
});
