import { describe, expect, test } from 'vitest';
import { inShop, resolved, told, wordsOf } from './estimated.js';

const saysOf = (text: string) => told(inShop(text));

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
    expect(wordsOf(inShop('sublet s "S" cost 20.01\n'), 'no-markup')).toContain('markup 30% on sublets');
    expect(wordsOf(inShop('part p "P" cost 100.01 new\n'), 'no-markup')).not.toContain('on sublets');
    expect(told(resolved('steelyard 1\nshop "S"\n  rate r 1.00\npart p "P" cost 0 new\n'))).toEqual([['no-markup', '0']]);
  });

  test('of outside work is written, or a cost', () => {
    expect(saysOf('sublet s "S" 5.00\n')).toEqual([]);
    expect(saysOf('sublet s "S"\n')).toEqual([['price-missing', 'sublet s "S"']]);
    expect(wordsOf(inShop('sublet s "S"\n'), 'price-missing')).toMatch(/outside work has no price.*sublet head-work/);
    expect(wordsOf(inShop('part p "P" new\n'), 'price-missing')).toMatch(/part has no price.*part pump/);
  });
});

describe('a core', () => {
  const core = (text: string) => inShop(`part p "P" 5.00 rebuilt\n${text}`).estimate.parts[0]?.core;

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
