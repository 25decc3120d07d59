import { describe, expect, test } from 'vitest';
import type { Turned } from '../../../src/weigh/changes/index.js';
import { changed } from '../../changes/both.js';

// What a change alone does to the day and the choice, and what it does on top of all others. Worked by hand.

const SHOP = 'steelyard 1\nshop "Bay"\n  currency USD\n  workday 8 h\n  rate bench 100.00 usual\n';
const job = (name: string, pump: string, title = 'Mend it') => `${SHOP}estimate "E-1"\nlabour pump "Pump" ${pump}\nlabour hose "Hose" 3 h\noption ${name} "${title}"\n  do pump\noption leave "Only the hose"\n  do hose\n`;

const inAll = (turned: Turned | undefined) => typeof turned === 'object' ? turned.options.map((one) => one === undefined ? undefined : `${one.inAll.before.toFixed(2)} > ${one.inAll.after.toFixed(2)}`) : turned;
const picks = (turned: Turned | undefined) => typeof turned === 'object' ? [turned.pick.before, turned.pick.after] : turned;

describe('an option that is called otherwise in the new version', () => {
  const { changes } = changed(job('mend', '2 h'), job('repair', '4 h'));
  const hours = changes.find(({ after }) => after?.title === 'Pump');

  test('is the same option in the texts between, each with the names of its own version', () => {
    expect(inAll(hours?.alone)).toEqual(['200.00 > 400.00', '300.00 > 300.00']);
    expect(inAll(hours?.last)).toEqual(['200.00 > 400.00', '300.00 > 300.00']);
  });

  test('is the cheapest by its place, whatever it is called', () => {
    expect([picks(hours?.alone), picks(hours?.last)]).toEqual([[0, 1], [0, 1]]);
  });

  test('turns nothing by that', () => {
    expect(changes.filter(({ sort }) => sort === 'renamed').map(({ after, alone, last }) => [after?.name, alone, last])).toEqual([['repair', 'none', 'none']]);
  });
});

test('an option that came is none before, and the cheapest after', () => {
  const { changes } = changed(job('mend', '2 h'), `${job('mend', '2 h')}option look "Only look"\n  labour "Look" 1 h\n`);
  expect(changes.map(({ sort, alone, last }) => [sort, inAll(alone), picks(alone), inAll(last), picks(last)])).toEqual([
    ['came', ['200.00 > 200.00', '300.00 > 300.00', undefined], [0, 2], ['200.00 > 200.00', '300.00 > 300.00', undefined], [0, 2]],
  ]);
});

test('where nothing can be ranked, nothing is the cheapest', () => {
  const { changes } = changed(job('mend', '2 h').replaceAll(/option[^]*/g, ''), job('mend', '3 h').replaceAll(/option[^]*/g, ''));
  expect(changes.map(({ alone, last }) => [picks(alone), picks(last)])).toEqual([[[undefined, undefined], [undefined, undefined]]]);
});

test('the ways in before and after are told by their names, and in the car where nothing is opened', () => {
  const way = (refit: string, more = '') => `${SHOP}estimate "E-1"\naccess open "Front off"\n  remove 1 h\n  refit ${refit}\naccess up "Engine lifted"\n  remove 1 h\nlabour pump "Pump"\n  takes 8 h\n  takes 2 h with open${more}\noption mend "Mend it"\n  do pump\n`;
  const told = (before: string, after: string) => changed(before, after).follows.flatMap(({ of }) => (of === undefined ? [] : [`${of.before} > ${of.after}`]));
  // In the car 8 h; with the front off 2 + 1 h and the refit; with the engine lifted as well 0.2 + 1 h and the same.
  expect(told(way('9 h'), way('1 h'))).toEqual(['in the car > open']);
  expect(told(way('1 h'), way('9 h'))).toEqual(['open > in the car']);
  expect(told(way('1 h'), way('1 h', '\n  takes 0.2 h with open, up'))).toEqual(['open > open + up']);
});

describe('a finding', () => {
  const seen = (rules: string) => `${job('mend', '2 h')}finding worn "Worn"\n  seen by borescope\n${rules}`;
  const alone = (before: string, after: string) => changed(seen(before), seen(after)).changes.map((one) => picks(one.alone));

  test('that comes to speak against an option, or does no more, turns the choice', () => {
    expect(alone('', '  rules out mend\n')).toEqual([[0, 1]]);
    expect(alone('  rules out mend\n', '')).toEqual([[1, 0]]);
  });

  test('that rules nothing out is not tried', () => {
    expect(alone('', '  noise "knocks"\n')).toEqual(['none']);
  });
});
