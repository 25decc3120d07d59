import { describe, expect, test } from 'vitest';
import { changed } from '../../changes/both.js';
import { JOB, rows, SHOP } from './rows.js';

// In what order rows are told, and what is told where a version has no option, or a name that nothing has. Rules of our own.

const files = (job: string, shop = SHOP) => ({ 'job.yard': `steelyard 1\n${job}`, 'shop.yard': shop });

describe('rows that are equal', () => {
  test('of what follows go by title, wherever they stand in the shop', () => {
    const taxes = ['  tax a "City tax" 1% on parts\n', '  tax b "Road tax" 3% on parts\n', '  tax c "Town tax" 2% on parts\n'];
    const seal = (price: string) => `${JOB}  part "Seal" ${price} new\n`;
    for (const order of [[0, 1, 2], [2, 1, 0], [1, 2, 0]]) {
      const shop = `${SHOP}${order.map((i) => taxes[i]).join('')}`;
      expect(rows(seal('50.00'), shop, seal('40.00'), shop)).toEqual(['moved Seal: 10.00', 'tax City tax: 0.10', 'tax Road tax: 0.30', 'tax Town tax: 0.20']);
    }
  });

  test('of two lines with the same words keep their order when the versions change places', () => {
    const bolts = (one: string, other: string) => `${JOB}  part "Bolt" ${one} new\n  part "Bolt" ${other} used\n`;
    const prices = (after: string, before: string) => changed(files(before), files(after)).changes.map(({ facts }) => facts.map(({ before: was, after: is }) => `${was ?? '-'} > ${is ?? '-'}`).join());
    expect(prices(bolts('12.00', '11.00'), bolts('10.00', '9.00'))).toEqual(['10.00 > 12.00', '9.00 > 11.00']);
    expect(prices(bolts('10.00', '9.00'), bolts('12.00', '11.00'))).toEqual(['12.00 > 10.00', '11.00 > 9.00']);
  });
});

describe('a version without an option', () => {
  const none = JOB.slice(0, JOB.indexOf('option'));
  const euro = SHOP.replace('USD', 'EUR');

  test('has no money to compare: what the other has comes in whole, in its own currency', () => {
    const there = changed(files(none), files(JOB, euro));
    const back = changed(files(JOB, euro), files(none));
    expect([there, back].map(({ comparable, money }) => [comparable, money.currency.code])).toEqual([[true, 'EUR'], [true, 'EUR']]);
    expect(rows(JOB, euro, none)).toEqual(['came Mend it: 600.00', 'moved Bay: 0.00']);
    expect(rows(none, SHOP, JOB, euro)).toEqual(['went Mend it: -600.00', 'moved Bay: 0.00']);
  });
});

test('a name that no line has is told as a change of the line that says it', () => {
  expect(rows(JOB.replace('  takes 8.0 h\n', '  after nowhere\n  takes 8.0 h\n'))).toEqual(['moved Pump: renew: 0.00']);
});
