import { describe, expect, test } from 'vitest';
import type { Labour } from '../../src/estimate/index.js';
import { called, resolved, told, wordsOf } from './estimated.js';

const SHOP = 'steelyard 1\nshop "S"\n  rate bench 100.00 usual\n  rate body 90.00\n  markup 50% to 100.00\n  markup 30% to 20.00 on sublets\n';
const read = (text: string) => resolved(SHOP + text);
const job = (text: string): Labour | undefined => read(text).estimate.labour[0];
const saysOf = (text: string) => told(read(text));
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
    const [with2, inCar] = read(text).problems.map(({ message }) => message.what);
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

describe('a way in', () => {
  const way = (text: string) => read(text).estimate.access[0];

  test('has hours, or parts or outside work; one with none of them looks free', () => {
    expect(saysOf('access out "Out"\n')).toEqual([['access-empty', 'access out "Out"']]);
    for (const below of ['remove 1 h', 'refit 1 h', 'part "Bolts" 1.00 new', 'sublet "Crane" 90.00']) expect(saysOf(`access out "Out"\n  ${below}\n`)).toEqual([]);
    expect(saysOf('access out "Out"\n  uses seal\npart seal "Seal" 1.00 new\n')).toEqual([]);
    expect(saysOf('access out "Out"\n  remove 1h\n').map(([code]) => code)).toEqual(['glued-unit']);
  });

  test('has the rate of its class where it has hours', () => {
    expect(way('access out "Out"\n  refit 1 h\n  class body\n')?.rate?.name).toBe('body');
    expect(way('access out "Out"\n  remove 1 h\n')?.rate?.name).toBe('bench');
    expect(way('access out "Out"\n  part "Bolts" 1.00 new\n')?.rate).toBeUndefined();
    expect(told(resolved('steelyard 1\nshop "S"\n  rate a 1.00\n  rate b 2.00\naccess out "Out"\n  refit 3 h\n'))).toEqual([['which-rate', '3 h']]);
  });

  test('includes others with what these include, each once, and brings parts along', () => {
    const one = way('access out "Out"\n  remove 1 h\n  includes front, low\n  uses seal, wash\n  part "Bolts" 1.00 new\n  needs bar\n  caution lifting\naccess front "Front"\n  remove 1 h\n  includes low\naccess low "Low"\n  remove 1 h\n  includes floor\naccess floor "Floor"\n  remove 1 h\npart seal "Seal" 1.00 new\nsublet wash "Wash" 1.00\ntool bar "Bar"\n');
    expect([one?.includes, one?.parts, one?.sublets, one?.tools].map((list) => called(list ?? []))).toEqual([['front', 'low', 'floor'], ['seal', 'Bolts'], ['wash'], ['bar']]);
    expect(one?.cautions).toEqual(['lifting']);
  });
});

describe('the price of a part', () => {
  const part = (line: string) => saysOf(`part p "P" ${line}\n`);

  test('is written, or a cost is that the markup makes a price of', () => {
    for (const line of ['5.00 new', 'cost 5.00 new', 'customer-supplied', '5.00 customer-supplied']) expect(part(line)).toEqual([]);
    expect(part('new')).toEqual([['price-missing', 'part p "P" new']]);
    expect(part('5.00 cost 3.00 new')).toEqual([['price-and-cost', '5.00']]);
    expect(part('5,00 new').map(([code]) => code)).toEqual(['thousands-comma']);
  });

  test('has a condition', () => {
    expect(part('5.00')).toEqual([['condition-missing', 'part p "P" 5.00']]);
    expect(part('cost 5.00')).toEqual([['condition-missing', 'part p "P" cost 5.00']]);
    expect(part('')).toEqual([['price-missing', 'part p "P"']]); // one message for one fault
  });

  test('from a cost needs a markup up to that cost, high as it may come', () => {
    expect(part('cost 100.00 new')).toEqual([]);
    expect(part('cost 100.01 new')).toEqual([['no-markup', '100.01']]);
    expect(part('cost 90 / 95 / 101 new')).toEqual([['no-markup', '90 / 95 / 101']]);
    expect(part('150.00 cost 120.00 new')).toEqual([['price-and-cost', '150.00']]);
    expect(saysOf('sublet s "S" cost 20.00\n')).toEqual([]);
    expect(saysOf('sublet s "S" cost 20.01\n')).toEqual([['no-markup', '20.01']]);
    expect(wordsOf(read('sublet s "S" cost 20.01\n'), 'no-markup')).toContain('markup 30% on sublets');
    expect(wordsOf(read('part p "P" cost 100.01 new\n'), 'no-markup')).not.toContain('on sublets');
    expect(told(resolved('steelyard 1\nshop "S"\n  rate r 1.00\npart p "P" cost 0 new\n'))).toEqual([['no-markup', '0']]);
  });

  test('of outside work is written, or a cost', () => {
    expect(saysOf('sublet s "S" 5.00\n')).toEqual([]);
    expect(saysOf('sublet s "S"\n')).toEqual([['price-missing', 'sublet s "S"']]);
    expect(wordsOf(read('sublet s "S"\n'), 'price-missing')).toMatch(/outside work has no price.*sublet head-work/);
    expect(wordsOf(read('part p "P" new\n'), 'price-missing')).toMatch(/part has no price.*part pump/);
  });
});

describe('a core', () => {
  const core = (text: string) => read(`part p "P" 5.00 rebuilt\n${text}`).estimate.parts[0]?.core;

  test('says its charge, when it is due, and what the refund loses', () => {
    const one = core('  core 150.00 due 30 d less 10.00\n    assemble 1.5 h\n    class body\n    keeps "Housing" less 40.00 worth 85.00\n    keeps "Coil"\n');
    expect([one?.charge, one?.due, one?.less, one?.assemble].map((amount) => amount?.likely.toFixed())).toEqual(['150', '30', '10', '1.5']);
    expect(one?.rate?.name).toBe('body');
    expect(one?.keeps.map(({ title, less, worth }) => [title, less?.likely.toFixed(), worth?.likely.toFixed()])).toEqual([['Housing', '40', '85'], ['Coil', undefined, undefined]]);
    expect(core('  core 150.00\n')).toMatchObject({ assemble: undefined, rate: undefined, keeps: [] });
    expect(core('')).toBeUndefined();
  });

  test('without its charge is told, and a second one', () => {
    expect(saysOf('part p "P" 5.00 rebuilt\n  core due 30 d\n')).toEqual([['amount-missing', 'core due 30 d']]);
    expect(saysOf('part p "P" 5.00 rebuilt\n  core 1,500\n').map(([code]) => code)).toEqual(['thousands-comma']);
    expect(saysOf('part p "P" 5.00 rebuilt\n  core 150.00\n  core 160.00\n')).toEqual([['only-once', 'core 160.00', 'core 150.00']]);
    expect(core('  core 150.00\n  core 160.00\n')?.charge?.likely.toFixed()).toBe('150');
  });
});

describe('a fee', () => {
  const fee = (line: string) => saysOf(`fee f "F" ${line}\n`);

  test('is an amount, or a percentage of something', () => {
    for (const line of ['5.00', '2 at 5.00', '5% of labour, parts', '5% of labour cap 50.00', '0% of labour']) expect(fee(line)).toEqual([]);
    expect(called(read('fee f "F" 5% of labour, parts, labour\n').estimate.fees)).toEqual(['f']);
    expect(read('fee f "F" 5% of labour, parts, labour\n').estimate.fees[0]?.of).toEqual(['labour', 'parts']);
  });

  test.each([['', 'neither an amount nor a percentage'], ['5.00 5% of labour', 'an amount and a percentage'], ['5%', 'a percentage of'], ['2 at 5% of labour', 'charged once']])('%s can’t be worked out', (line, says) => {
    expect(fee(line).map(([code]) => code)).toEqual(['fee-unclear']);
    expect(wordsOf(read(`fee f "F" ${line}\n`), 'fee-unclear')).toContain(says);
  });

  test('that can’t be read is told once', () => {
    expect(fee('5,00').map(([code]) => code)).toEqual(['thousands-comma']);
  });
});

describe('a picture of a finding', () => {
  test.each(['a.png', 'a.PNG', 'deep/a.jpg', 'a.jpeg', 'a.webp'])('%s is one', (path) => {
    const one = read(`finding f "F"\n  picture "${path}"\n`);
    expect(told(one)).toEqual([]);
    expect(one.estimate.findings[0]?.pictures).toMatchObject([{ path, uri: path }]);
  });

  test.each(['a.svg', 'a.gif', 'a.png.exe', 'apng', '../a.png', '/a.png'])('%s is none of this workspace', (path) => {
    const one = read(`finding f "F"\n  picture "${path}"\n`);
    expect(told(one)).toEqual([['picture-outside', `"${path}"`]]);
    expect(one.estimate.findings[0]?.pictures).toMatchObject([{ path, uri: undefined }]);
  });

  test('may be missing', () => {
    expect(read('finding f "F"\n').estimate.findings[0]?.pictures).toEqual([]);
  });
});
