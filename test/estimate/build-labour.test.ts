import { describe, expect, test } from 'vitest';
import type { Labour } from '../../src/estimate/index.js';
import { called, inShop, resolved, told, wordsOf } from './estimated.js';

const job = (text: string): Labour | undefined => inShop(text).estimate.labour[0];
const saysOf = (text: string) => told(inShop(text));
const WAYS = 'access lifted "Lifted"\n  remove 2 h\naccess out "Out"\n  remove 3 h\n';

describe('the times of a job', () => {
  const times = (text: string) => job(text)?.modes.map(({ hours, with: ways }) => [hours.likely.toFixed(), ...called(ways)]);

  test('stand on the line or below it, each for its ways in', () => {
    expect(times(`${WAYS}labour p "P" 9 h\n`)).toEqual([['9']]);
    expect(times(`${WAYS}labour p "P" 4 h with lifted\n`)).toEqual([['4', 'lifted']]);
    expect(times(`${WAYS}labour p "P" 9 h\n  takes 4 h with lifted\n  takes 2 h with lifted, out\n`)).toEqual([['9'], ['4', 'lifted'], ['2', 'lifted', 'out']]);
    expect(saysOf(`${WAYS}labour p "P" 9 h\n  takes 4 h with lifted\n`)).toEqual([]);
  });

  test('two for the same ways in are told, in whichever order they are named; the first holds', () => {
    const text = `${WAYS}labour p "P" 9 h\n  takes 2 h with lifted, out\n  takes 3 h with out, lifted\n  takes 8 h\n`;
    expect(saysOf(text)).toEqual([['takes-twice', 'takes 3 h with out, lifted', 'takes 2 h with lifted, out'], ['takes-twice', 'takes 8 h', '9 h']]);
    expect(times(text)).toEqual([['9'], ['2', 'lifted', 'out']]);
    const [with2, inCar] = inShop(text).problems.map(({ message }) => message.what);
    expect(with2).toContain('with out, lifted');
    expect(inCar).toContain('in the car');
  });

  test('with a way in that nothing has are left out, so that the work looks no easier than it is', () => {
    const text = `${WAYS}labour p "P" 9 h\n  takes 4 h with liftd\n  takes 3 h with lifted, nowhere\n`;
    expect(saysOf(text).map(([code]) => code)).toEqual(['unknown-name', 'unknown-name']);
    expect(times(text)).toEqual([['9']]);
  });

  test('that are missing are told, once', () => {
    expect(saysOf('labour p "P"\n')).toEqual([['hours-missing', 'labour p "P"']]);
    expect(saysOf('labour p "P" 5h\n')).toEqual([['glued-unit', '5h']]);
    expect(saysOf(`${WAYS}labour p "P"\n  takes with lifted\n`)).toEqual([['amount-missing', 'takes with lifted']]);
    expect(saysOf(`${WAYS}labour p "P"\n  takes 5h with lifted\n`)).toEqual([['glued-unit', '5h']]);
    expect(job('labour p "P"\n')?.rate).toBeUndefined();
  });
});

describe('the rate of a job', () => {
  test('is that of its class, or the usual one', () => {
    expect(job('labour p "P" 1 h class body\n')?.rate?.name).toBe('body');
    expect(job('labour p "P" 1 h\n')?.rate?.name).toBe('bench');
    expect(job('labour p "P" 1 h class boddy\n')?.rate).toBeUndefined();
    expect(saysOf('labour p "P" 1 h class boddy\n')).toEqual([['unknown-name', 'boddy']]);
  });

  test('must be chosen where there are several and none is usual, and be there at all', () => {
    const several = resolved('steelyard 1\nshop "S"\n  rate bench 100.00\n  rate body 90.00\nlabour p "P" 1 h\n');
    expect(told(several)).toEqual([['which-rate', '1 h']]);
    expect(wordsOf(several, 'which-rate')).toContain('bench, body');
    expect(told(resolved('steelyard 1\nlabour p "P" 1 h\nlabour q "Q" 2 h\n'))).toEqual([['no-rate', '1 h']]); // one fault, however much work there is
  });
});

describe('what a job needs and uses', () => {
  test('jobs come before tools of the same name, parts before outside work', () => {
    const text = 'labour p "P" 1 h\n  needs drain, bar, lock\n  uses seal, face\nlabour drain "Drain" 1 h\ntool bar "Bar" 5.00\ntool lock "Lock"\npart seal "Seal" 1.00 new\nsublet face "Face" 1.00\n';
    const { needs, tools, parts, sublets } = job(text) as Labour;
    expect([needs, tools, parts, sublets].map(called)).toEqual([['drain'], ['bar', 'lock'], ['seal'], ['face']]);
    const both = 'labour p "P" 1 h\n  needs bar\n  uses seal\nlabour bar "Bar" 1 h\ntool bar "Bar" 5.00\npart seal "Seal" 1.00 new\nsublet seal "Seal" 1.00\n';
    expect(saysOf(both)).toEqual([['ambiguous-name', 'bar'], ['ambiguous-name', 'seal']]);
    const one = job(both) as Labour;
    expect([one.needs, one.tools, one.parts, one.sublets].map(called)).toEqual([['bar'], [], ['seal'], []]);
  });

  test('each stands once, however often it is named', () => {
    const { needs, tools, parts, because } = job('labour p "P" 1 h\n  needs drain, drain, bar, bar\n  uses seal, seal\n  because seen, seen\nlabour drain "Drain" 1 h\ntool bar "Bar"\npart seal "Seal" 1.00 new\nfinding seen "Seen"\n') as Labour;
    expect([needs, tools, parts, because].map(called)).toEqual([['drain'], ['bar'], ['seal'], ['seen']]);
  });

  test('what else it says is kept', () => {
    const { count, apart, done, cautions, after, title } = job('labour p "P" 2 at 3 h\n  apart after 1 h\n  done first\n  caution fuel, oil, fuel\n  after q\nlabour q "Q" 1 h\n') as Labour;
    expect([title, count?.likely.toFixed(), apart?.likely.toFixed(), done, cautions, after.map(({ name }) => name)]).toEqual(['P', '2', '1', 'first', ['fuel', 'oil'], ['q']]);
  });

  test('nothing where it says nothing', () => {
    expect(job('labour p "P" 1 h\n')).toMatchObject({ needs: [], tools: [], parts: [], sublets: [], because: [], after: [], cautions: [], count: undefined, apart: undefined, done: undefined });
  });
});
