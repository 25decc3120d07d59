import { describe, expect, test } from 'vitest';
import type { Part } from '../../src/estimate/index.js';
import { createLanguageService, resolveWithin } from '../../src/service/index.js';
import { partLine, type Comparison } from '../../src/weigh/index.js';
import { read, readSound } from './weighed.js';

// Parts, their cores and fees, each as a line of the quote. Sums by hand.

const SHOP = 'steelyard 1\nshop "Invented Bay"\n  currency USD\n  rate bench 100.00\n';
const WORK = 'option one "One"\n  labour "Work" 2 h\n';

describe('a fee that can’t be worked out is left out of the totals, as its message says', () => {
  test.each([
    ['an amount and a percentage', '30.00 5% of labour', 'This fee has an amount and a percentage. It is left out of the totals.'],
    ['a percentage of nothing', '5%', 'This fee does not say what it is a percentage of. It is left out of the totals.'],
    ['what it is a percentage of, and no percentage', 'of labour', 'This fee has neither an amount nor a percentage. It is left out of the totals.'],
    ['neither of them', '', 'This fee has neither an amount nor a percentage. It is left out of the totals.'],
    ['a count before a percentage', '3 at 5% of labour', 'A percentage is charged once, so it takes no count before it. It is left out of the totals.'],
  ])('%s', (_, facts, told) => {
    for (const text of [`${SHOP}${WORK}  fee "Supplies" ${facts}\n  fee "Tow" 40.00\n`, `${SHOP}  fee "Supplies" ${facts}\n${WORK}  fee "Tow" 40.00\n`]) {
      const { errors, option } = read(text);
      expect(errors.map((one) => one.text.startsWith(told))).toEqual([true]);
      const { totals, complete } = option('one');
      expect([totals.lines.map(({ title }) => title), totals.fees.likely.toFixed(), totals.total.likely.toFixed(), complete]).toEqual([['Work', 'Tow'], '40', '240', false]);
    }
  });
});

test('a percentage of one sum stands on that sum; of several, on what they come to together', () => {
  const parts = `${SHOP}${WORK}  part "Hose" 20.00 new\n`;
  const below = (of: string) => readSound(`${parts}  fee "Supplies" 5% of ${of}\n`).option('one').totals.lines.find(({ kind }) => kind === 'fee')?.amount.from.map(({ label, likely }) => `${label}: ${likely.toFixed()}`);
  expect(below('labour')).toEqual(['Labour on the work: 200', 'Percentage: 5']);
  expect(below('labour, parts')).toEqual(['What Supplies is a percentage of: 220', 'Percentage: 5']);
});

test('goods, their cores and fees take no way in themselves: only work does', () => {
  const way = 'access out "Engine out"\n  remove 1 h\n  part "Mount" 5.00 new\n    core 2.00\n';
  const { lines } = readSound(`${SHOP}${way}option one "One"\n  labour "Work" 2 h with out\n  part "Unit" 20.00 rebuilt\n    core 7.00\n  sublet "Machining" 9.00\n  fee "Tow" 40.00\n`).option('one').totals;
  expect(lines.filter((line) => line.with.length > 0).map(({ title }) => title)).toEqual(['Engine out: remove', 'Work']);
  expect(lines.flatMap((line) => line.with)).toEqual(['out', 'out']);
});

test('a part of a shared file has the price of each shop that uses it, whichever is looked at last', () => {
  const files = new Map([
    ['/w/goods.yard', 'steelyard 1\npart hose "Hose" cost 10.25 new\n'],
    ['/w/a.yard', 'steelyard 1\nuse "goods.yard"\nshop "A"\n  currency USD\n  markup 50%\noption one "One"\n  fit hose\n'],
    ['/w/b.yard', 'steelyard 1\nuse "goods.yard"\nshop "B"\n  currency USD\n  rounding half-down\n  markup 50%\noption one "One"\n  fit hose\n'],
    ['/w/c.yard', 'steelyard 1\nuse "goods.yard"\nshop "C"\n  currency USD\n  markup 100%\noption one "One"\n  fit hose\n'],
  ]);
  const service = createLanguageService({ read: (uri) => ({ text: files.get(uri) ?? '' }), resolvePath: (from, to) => resolveWithin('/w', from, to) });
  const price = (name: string) => service.weighing(`/w/${name}.yard`).comparison.options.map(({ totals }) => totals.total.likely.toFixed(2));
  // 15.375 is rounded up in one shop and down in the other.
  expect(['a', 'b', 'c', 'a', 'b'].map(price)).toEqual([['15.38'], ['15.37'], ['20.50'], ['15.38'], ['15.37']]);
});

test('a part that was priced once is priced anew at another markup, and in another rounding', () => {
  const [own, other] = ['rounding half-up\n  markup 50%', 'rounding half-down\n  markup 100%'].map((facts) => readSound(`steelyard 1\nshop "S"\n  currency USD\n  ${facts}\npart hose "Hose" cost 10.25 new\noption one "One"\n  fit hose\n`).comparison) as [Comparison, Comparison];
  const [part] = own.options.flatMap(({ option }) => option.parts) as [Part];
  const price = (shop: Comparison, money: Comparison) => partLine(part, 'work', shop.estimate.shop, money.money).amount.likely.toFixed(2);
  // 10.25 and a half are 15.375.
  expect([price(own, own), price(own, other), price(other, other), price(own, other), price(own, own)]).toEqual(['15.38', '15.37', '20.50', '15.37', '15.38']);
  expect([price(other, own), price(own, own)]).toEqual(['20.50', '15.38']);
});

test('a part for which nothing is written has no amount yet, and says so; the lines beside it stand', () => {
  const { lines } = read(`${SHOP}${WORK}  part "Hose" new\n  part "Belt" 20.00 new\n`).option('one').totals;
  expect(lines.map(({ title, amount: { likely, step } }) => [title, likely.toFixed(), step.kind === 'found' ? step.how : ''])).toEqual([['Work', '200', ''], ['Hose', '0', 'No price is known for this line, so it has no amount yet.'], ['Belt', '20', '']]);
});
