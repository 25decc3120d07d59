import { describe, expect, test } from 'vitest';
import { chancesOf } from '../../src/weigh/chances.js';
import { read } from './weighed.js';

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';

/** The chances that count for an option: title, the places of those of which one must happen before it, and a mark where it comes back later. */
function counted(text: string, name = 'one'): { readonly rows: readonly string[]; readonly all: number } {
  const { comparison, option } = read(HEAD + text);
  const found = chancesOf(option(name), comparison.estimate, comparison.money);
  return { rows: found.counted.map(({ chance, under, when }) => `${chance.title}${under.length === 0 ? '' : ` of ${under.join(' or ')}`}${when === 'comeback' ? ', later' : ''}`), all: found.all };
}

const chance = (title: string, indent = '  ', words = '10%', below = '') => `${indent}chance "${title}" ${words}\n${indent}  part "P${title}" 4.00 new\n${below}`;

describe('the chances of an option', () => {
  test('its own, those of the jobs it does, then those of the ways in that it pays for', () => {
    const text = `access up "Up"\n  remove 1 h\n${chance('up')}access off "Off"\n  remove 9 h\n${chance('off')}labour w "W"\n  takes 5 h\n  takes 1 h with up\n  takes 1 h with off\n${chance('job')}labour v "V" 1 h\n${chance('idle')}option one "One"\n  do w\n${chance('own')}`;
    expect(counted(text)).toEqual({ rows: ['own', 'job', 'up'], all: 3 });
  });

  test('each stands before those below it, which hang on it', () => {
    const text = `option one "One"\n${chance('a', '  ', '10%', chance('b', '    ', '20%', chance('c', '      ')))}${chance('d', '  ', '30%', chance('e', '    '))}`;
    expect(counted(text)).toEqual({ rows: ['a', 'b of 0', 'c of 1', 'd', 'e of 3'], all: 5 });
  });

  test('what comes back later comes back with all that may then turn up', () => {
    const text = `option one "One"\n${chance('a', '  ', '10% comeback', chance('b', '    '))}${chance('c', '  ', '10%', chance('d', '    ', '10% comeback', chance('e', '      ')))}${chance('f')}`;
    expect(counted(text)).toEqual({ rows: ['a, later', 'b of 0, later', 'c', 'd of 2, later', 'e of 3, later', 'f'], all: 6 });
  });

  test('of work that a chance brings hang on that chance; not where it comes back later', () => {
    const job = `labour w "W" 1 h\n${chance('job')}`;
    expect(counted(`${job}option one "One"\n  chance "a" 10%\n    do w\n`)).toEqual({ rows: ['a', 'job of 0'], all: 2 });
    expect(counted(`${job}option one "One"\n  chance "a" 10% comeback\n    do w\n`)).toEqual({ rows: ['a, later'], all: 1 });
  });

  test('of a way in that a chance opens hang on that chance; of one that is open already, on nothing', () => {
    const lines = `access up "Up"\n  remove 1 h\n${chance('up')}labour w "W" 1 h with up\nlabour v "V" 1 h\n`;
    const turns = '  chance "a" 10%\n    do w\n  chance "b" 10% comeback\n    do w\n  chance "c" 20%\n    labour "More" 1 h with up\n';
    expect(counted(`${lines}option one "One"\n  do v\n${turns}`)).toEqual({ rows: ['a', 'up of 0 or 3', 'b, later', 'c'], all: 4 });
    expect(counted(`${lines}option one "One"\n  do w\n${turns}`)).toEqual({ rows: ['a', 'b, later', 'c', 'up'], all: 4 });
  });

  test('of two jobs that bring each other hang on each other and on what brings one of them', () => {
    const jobs = 'labour w "W" 1 h\n  chance "a" 10%\n    do v\nlabour v "V" 1 h\n  chance "b" 10%\n    do w\n';
    expect(counted(`${jobs}option one "One"\n  chance "c" 10%\n    do w\n`)).toEqual({ rows: ['c', 'a of 0 or 2', 'b of 1'], all: 3 });
  });

  test('of one job that is met twice count once, after either', () => {
    const job = `labour w "W" 1 h\n${chance('job')}`;
    expect(counted(`${job}option one "One"\n  chance "a" 10%\n    do w\n  chance "b" 10%\n    do w\n`)).toEqual({ rows: ['a', 'job of 0 or 2', 'b'], all: 3 });
    expect(counted(`${job}option one "One"\n  do w\n  chance "a" 10%\n    do w\n`)).toEqual({ rows: ['a', 'job'], all: 2 });
  });

  test('of work that is done anyway hang on no chance that would bring it, in whatever order jobs are done', () => {
    const jobs = `labour w "W" 1 h\n${chance('job')}labour v "V" 1 h\n  chance "a" 10%\n    do w\n`;
    expect(counted(`${jobs}option one "One"\n  do w, v\n`)).toEqual({ rows: ['job', 'a'], all: 2 });
    expect(counted(`${jobs}option one "One"\n  do v, w\n`)).toEqual({ rows: ['a', 'job'], all: 2 });
  });

  test('up to twelve count; all are counted', () => {
    const many = (count: number) => `option one "One"\n${Array.from({ length: count }, (_, i) => chance(`c${i}`)).join('')}`;
    expect([12, 13, 15].map((count) => counted(many(count))).map(({ rows, all }) => [rows.length, all])).toEqual([[12, 12], [12, 13], [12, 15]]);
  });
});
