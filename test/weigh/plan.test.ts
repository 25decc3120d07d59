import { describe, expect, test } from 'vitest';
import { MOST_WAYS } from '../../src/weigh/ways.js';
import { read, readSound } from './weighed.js';

// How an option gets at its work. 100.00 an hour; sums by hand.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';
const way = (name: string, hours: number, more = '') => `access ${name} "${name}"\n  remove ${hours} h\n${more}`;
const option = (...lines: readonly string[]) => `option one "One"\n${lines.map((line) => `  ${line}\n`).join('')}`;

function planned(text: string) {
  const { planned: { chosen, others, unpinned, stand, unreachable, tooMany }, totals } = readSound(HEAD + text).option('one');
  const told = (plan: typeof chosen) => `${plan.paid.map(({ name }) => name).join('+') || 'in the car'} ${plan.totals.total.likely.toFixed()}`;
  return { chosen: told(chosen), others: others.map(told), unpinned: unpinned === undefined ? undefined : told(unpinned), stand: stand.totals.total.likely.toFixed(), unreachable: unreachable.map(({ title }) => title), tooMany, lines: totals.lines.map(({ title, amount }) => `${title} ${amount.likely.toFixed()}`), jobs: chosen.jobs.map(({ job, mode }) => `${job.title} with ${mode.with.map(({ name }) => name).join('+') || 'nothing'}`) };
}

const WAYS = `${way('up', 1)}${way('out', 5, '  includes up\n')}`;
const JOB = 'labour w "W"\n  takes 9 h\n  takes 4 h with up\n  takes 1 h with out\n';

describe('the cheapest plan', () => {
  test('with its runners-up, and the same work on a stand', () => {
    // 1 h + 4 h, 5 h + 1 h, 9 h in the car; with all ways open 1 h.
    expect(planned(`${WAYS}${JOB}${option('do w')}`)).toMatchObject({ chosen: 'up 500', others: ['out 600', 'in the car 900'], unpinned: undefined, stand: '100', unreachable: [], tooMany: undefined, jobs: ['W with up'] });
  });

  test('at most three runners-up are told', () => {
    const names = ['a', 'b', 'c', 'd', 'e'];
    const text = `${names.map((name, i) => way(name, i + 1)).join('')}labour w "W"\n  takes 30 h\n${names.map((name) => `  takes 1 h with ${name}\n`).join('')}${option('do w')}`;
    expect(planned(text)).toMatchObject({ chosen: 'a 200', others: ['b 300', 'c 400', 'd 500'] });
  });

  test('pinned: not what a stage opened gives anyway', () => {
    const text = `access up "Up"\n  remove 1 h\n  refit 2 h\naccess out "Out"\n  includes up\n  remove 5 h\n  refit 6 h\nlabour w "W" 1 h with up\nstage look "Look"\n  opens out\n`;
    for (const pin of [[], ['way up'], ['way up, out']]) expect(planned(`${text}${option('do w', ...pin)}`).chosen, pin[0]).toBe('out 1200');
  });

  test('pinned: those ways in and no others, beside what would be chosen', () => {
    expect(planned(`${WAYS}${JOB}${option('do w', 'way out')}`)).toMatchObject({ chosen: 'out 600', others: ['up 500', 'in the car 900'], unpinned: 'up 500' });
    expect(planned(`${WAYS}${JOB}${option('do w', 'way in-car')}`)).toMatchObject({ chosen: 'in the car 900', others: ['up 500', 'out 600'], unpinned: 'up 500' });
  });

  test('a way in that gives another serves its jobs, too', () => {
    expect(planned(`${WAYS}${JOB}labour v "V" 2 h with up\nlabour x "X" 1 h with out\n${option('do w, v, x')}`)).toMatchObject({ chosen: 'out 900', jobs: ['W with out', 'V with up', 'X with out'] });
  });

  test('equal in money goes to fewer hours; equal in both to the time that is written first', () => {
    const text = (first: string, second: string) => `steelyard 1\nshop "S"\n  rate bench 100.00 usual\n${way('up', 0)}labour w "W"\n  takes ${first}\n  takes ${second}\noption one "One"\n  do w\n  way up\n`;
    const mode = (lines: string) => readSound(lines).option('one').planned.chosen.jobs.map(({ mode: { with: ways, hours } }) => `${hours.likely.toFixed()} ${ways.map(({ name }) => name).join()}`);
    expect(mode(text('2 h', '2 h with up'))).toEqual(['2 ']);
    expect(mode(text('2 h with up', '2 h'))).toEqual(['2 up']);
    // Where both cost nothing the hours decide.
    expect(mode(text('2 h', '1 h with up').replace('100.00', '0.00'))).toEqual(['1 up']);
  });
});

describe('work that can’t be reached', () => {
  test('with the pinned ways in is left out, and told', () => {
    const found = read(`${HEAD}${WAYS}labour w "W" 4 h with up\nlabour v "V" 1 h\n${option('do w, v', 'way in-car')}`);
    const { planned: { unreachable, chosen }, complete } = found.option('one');
    expect([unreachable.map(({ title }) => title), chosen.totals.total.likely.toFixed(), complete, found.errors.length]).toEqual([['W'], '100', false, 1]);
  });
});

describe('too many ways in', () => {
  const names = (count: number) => Array.from({ length: count }, (_, i) => `w${i}`);
  const text = (count: number, pin = '') => `${HEAD}${names(count).map((name) => way(name, 1)).join('')}labour w "W"\n  takes 30 h\n${names(count).map((name) => `  takes 1 h with ${name}\n`).join('')}option one "One"\n  do w\n${pin}`;

  test('as many as are chosen among, and one more', () => {
    const [most, more] = [read(text(MOST_WAYS)), read(text(MOST_WAYS + 1))].map((found) => found.option('one'));
    expect([most?.planned.tooMany, most?.complete, most?.totals.total.likely.toFixed()]).toEqual([undefined, true, '200']);
    expect([more?.planned.tooMany, more?.complete, more?.planned.others]).toEqual([MOST_WAYS + 1, false, []]);
  });

  test('a pinned plan is worked out all the same', () => {
    const { planned: { chosen, others, unpinned, tooMany }, complete } = read(text(MOST_WAYS + 1, '  way w3\n')).option('one');
    expect([chosen.totals.total.likely.toFixed(), others, unpinned, tooMany, complete]).toEqual(['200', [], undefined, undefined, true]);
  });
});

describe('what a way in brings along', () => {
  const goods = `part seal "Seal" 10.00 new\nsublet skim "Skim" 20.00\ntool lock "Lock" 30.00\n`;

  test('its parts, outside work and hired tools', () => {
    expect(planned(`${goods}${way('up', 1, '  uses seal, skim\n  needs lock\n')}${option('labour "W" 1 h with up')}`).lines).toEqual(['up: remove 100', 'Seal 10', 'Skim 20', 'Lock: hire 30', 'W 100']);
  });

  test('what the work brings along too is charged once', () => {
    const text = `${goods}${way('up', 1, '  uses seal, skim\n  needs lock\n')}labour w "W" 1 h with up\n  uses seal, skim\n  needs lock\n${option('do w')}`;
    expect(planned(text)).toMatchObject({ chosen: 'up 260', stand: '160' });
  });

  test('what two ways in use is charged once', () => {
    const more = '  uses seal\n  needs lock\n';
    expect(planned(`${goods}${way('up', 1, more)}${way('off', 1, more)}${option('labour "W" 1 h with up, off')}`)).toMatchObject({ chosen: 'up+off 340' });
  });

  test('a dear part of a way in turns the choice', () => {
    // 1 h and a part of 450.00 is more than 5 h.
    expect(planned(`part dear "Dear" 450.00 new\n${way('up', 1, '  uses dear\n')}${way('out', 5)}${JOB}${option('do w')}`)).toMatchObject({ chosen: 'out 600', others: ['in the car 900', 'up 950'] });
  });

  test('an old core that comes with it: charge, and putting it together', () => {
    const text = `part unit "Unit" 90.00 rebuilt\n  core 50.00\n    assemble 1 h\n${way('up', 1, '  uses unit\n')}${option('labour "W" 1 h with up')}`;
    expect(planned(text).lines).toEqual(['up: remove 100', 'Unit 90', 'Unit: core charge 50', 'Unit: put the core together 100', 'W 100']);
  });
});
