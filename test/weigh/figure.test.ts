import { describe, expect, test } from 'vitest';
import { currencyOf, type Currency } from '../../src/vocabulary/index.js';
import { Decimal, type Amount } from '../../src/vocabulary/index.js';
import { besideLeast, constant, difference, found, given, greatest, hoursProduct, least, percentage, product, raised, remainder, sum, times, type Figure } from '../../src/weigh/figure.js';
import { moneyOf } from '../../src/weigh/index.js';

// Each point of a figure is worked from the same point of those that it is made from. Sums by hand.

const cents = moneyOf(currencyOf('USD') as Currency, 'half-up');
const place = {} as Amount['at'];

function written(text: string): Amount {
  const points = text.split('/').map((point) => new Decimal(point.trim()));
  const [low, likely = low, high = likely] = points as [Decimal, Decimal?, Decimal?];
  return { low, likely, high, unit: undefined, at: place } as Amount;
}

const money = (text: string) => given('Price', 'money', written(text));
const said = ({ low, likely, high }: Figure) => [low, likely, high].map((point) => point.toFixed()).join(' / ');

describe('a written figure', () => {
  test('may come in otherwise where any of its points differs', () => {
    // A single figure is one object three times, as it is read.
    const ranged = (text: string) => {
      const amount = written(text);
      const { low, likely, high } = amount;
      return given('Price', 'money', { ...amount, low: low.eq(likely) ? likely : low, high: high.eq(likely) ? likely : high }).ranged;
    };
    expect(['5', '4 / 5 / 5', '5 / 5 / 6', '4 / 5 / 6'].map(ranged)).toEqual([false, true, true, true]);
  });

  test('knows its place; a constant has none, and never comes in otherwise', () => {
    expect(money('5')).toMatchObject({ at: place, step: { kind: 'given' }, from: [] });
    expect(constant('Day', 'hours', new Decimal(8))).toMatchObject({ at: undefined, step: { kind: 'given' }, from: [], ranged: false });
    expect(said(constant('Day', 'hours', new Decimal(8)))).toBe('8 / 8 / 8');
  });

  test('what is found has its words, and rests on what it was found from', () => {
    const price = money('5 / 6 / 7');
    expect(found('Day', 'days', new Decimal(3), 'By the calendar.', [price])).toMatchObject({ step: { kind: 'found', how: 'By the calendar.' }, from: [price], ranged: false });
    expect(found('Day', 'days', new Decimal(3), 'By the calendar.').from).toEqual([]);
    expect(said(found('Day', 'days', new Decimal(3), '', [price]))).toBe('3 / 3 / 3');
  });
});

describe('worked figures', () => {
  const [a, b, c] = [money('10 / 12 / 20'), money('1 / 2 / 6'), money('5')];

  test.each<[string, Figure, string]>([
    ['a sum', sum('', 'money', [a, b, c]), '16 / 19 / 31'],
    ['a sum of nothing', sum('', 'money', []), '0 / 0 / 0'],
    ['a difference', difference('', 'money', [a, b, c]), '4 / 5 / 9'],
    ['a difference below nothing', difference('', 'money', [b, a]), '-9 / -10 / -14'],
    ['what is left', remainder('', 'money', [a, b, c]), '4 / 5 / 9'],
    ['what is left is never below nothing', remainder('', 'money', [money('5 / 8 / 9'), money('6 / 7 / 10')]), '0 / 1 / 0'],
    ['the least, point by point', least('', [a, money('11'), money('9 / 30 / 40')]), '9 / 11 / 11'],
    ['the greatest, point by point', greatest('', [a, money('11'), money('9 / 30 / 40')]), '11 / 30 / 40'],
    ['all multiplied, unrounded', times('', 'money', [a, money('0.001'), c]), '0.05 / 0.06 / 0.1'],
    ['a cost with its markup, unrounded', raised('', money('0.33 / 0.35 / 0.37'), given('', 'percent', written('50'))), '0.495 / 0.525 / 0.555'],
  ])('%s', (_, figure, wanted) => {
    expect(said(figure)).toBe(wanted);
  });

  test('money is rounded once, on the exact product: 0.333 h at 100.35 are 33.41655', () => {
    expect(said(product('', [given('', 'hours', written('0.333')), money('100.35')], cents, undefined))).toBe('33.42 / 33.42 / 33.42');
    // Three times 0.335 at 1.00: 1.005 becomes 1.01, not three times 0.34.
    expect(said(product('', [given('', 'number', written('3')), money('0.335')], cents, undefined))).toBe('1.01 / 1.01 / 1.01');
    expect(said(product('', [], cents, undefined))).toBe('0 / 0 / 0');
  });

  test('minutes are divided last: 50 min at 100.00 are 83.33; hours are not rounded', () => {
    const minutes = given('', 'minutes', written('40 / 50 / 60'));
    const work = product('', [minutes, money('100')], cents, place, 60);
    expect([said(work), work.step, work.at]).toEqual(['66.67 / 83.33 / 100', { kind: 'product', per: 60, rounded: true }, place]);
    expect(product('', [minutes], cents, place).step).toEqual({ kind: 'product', per: 1, rounded: true });
    const hours = hoursProduct('', [given('', 'minutes', written('45'))], 60);
    expect([said(hours), hours.unit, hours.step]).toEqual(['0.75 / 0.75 / 0.75', 'hours', { kind: 'product', per: 60, rounded: false }]);
    expect(hoursProduct('', [given('', 'hours', written('2'))]).step).toEqual({ kind: 'product', per: 1, rounded: false });
  });

  test('a percentage is rounded to the coin, half a cent up: 7.25 % of 10.00 / 12.00 / 20.00', () => {
    const tax = percentage('Tax', a, given('', 'percent', written('7.25')), cents, place);
    expect([said(tax), tax.unit, tax.at]).toEqual(['0.73 / 0.87 / 1.45', 'money', place]);
  });

  test('the hours beside the least amount; of equal amounts the fewest hours', () => {
    const hours = (text: string) => given('', 'hours', written(text));
    expect(said(besideLeast('', [money('10'), money('8'), money('9')], [hours('1'), hours('2'), hours('3')]))).toBe('2 / 2 / 2');
    expect(said(besideLeast('', [money('9'), money('8'), money('8')], [hours('1'), hours('3'), hours('2')]))).toBe('2 / 2 / 2');
    expect(said(besideLeast('', [money('8'), money('8')], [hours('2'), hours('3')]))).toBe('2 / 2 / 2');
    expect(said(besideLeast('', [money('5 / 9 / 9'), money('6 / 7 / 10')], [hours('1 / 2 / 4'), hours('3 / 5 / 6')]))).toBe('1 / 5 / 4');
  });

  test('units are those of what they are made from', () => {
    expect([least('', [given('', 'hours', written('1'))]).unit, greatest('', [given('', 'days', written('1'))]).unit, besideLeast('', [a], [given('', 'hours', written('1'))]).unit]).toEqual(['hours', 'days', 'hours']);
  });

  test('one that may come in otherwise makes all that rests on it so', () => {
    expect([sum('', 'money', [c, a]).ranged, sum('', 'money', [c, c]).ranged, sum('', 'money', []).ranged, sum('', 'money', [sum('', 'money', [c, b])]).ranged]).toEqual([true, false, false, true]);
  });
});
