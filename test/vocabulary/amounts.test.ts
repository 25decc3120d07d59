import { describe, expect, test } from 'vitest';
import { jsonOf, messagesOf, said } from './said.js';

describe('one figure stands for low, likely and high; three are those', () => {
  test('one', () => {
    expect(jsonOf('part p "P" 64.30 new\n')).toMatchObject({ price: { low: '64.3', likely: '64.3', high: '64.3' } });
  });

  test('three, with the unit behind the last', () => {
    expect(jsonOf('labour p "P" 4.5 / 5.5 / 8 h\n')).toMatchObject({ hours: { low: '4.5', likely: '5.5', high: '8', unit: 'h' } });
    expect(jsonOf('chance c "C"\n')).toBeUndefined(); // only below work
    expect(jsonOf('shop "S"\n  markup 40 / 50 / 60% to 250.00\n')).toMatchObject({ markup: [{ percent: { low: '40', likely: '50', high: '60', unit: '%' }, upTo: { likely: '250' } }] });
  });

  test('three that are equal are in order', () => {
    expect(said('labour p "P" 5 / 5 / 5 h\n')).toEqual([]);
  });

  test.each([
    ['5 / 4 / 6', '4 / 5 / 6'],
    ['4 / 6 / 5', '4 / 5 / 6'],
    ['6 / 5 / 4', '4 / 5 / 6'],
    ['10 / 9.50 / 11', '9.50 / 10 / 11'],
    // By what they are worth, not letter by letter.
    ['100 / 20 / 3', '3 / 20 / 100'],
  ])('%s is out of order', (written, sorted) => {
    expect(said(`labour p "P" ${written} h\n`)).toEqual([['figures-out-of-order', written, sorted]]);
  });

  test('two have no likely one', () => {
    expect(said('labour p "P" 4.5 / 8 h\n')).toEqual([['two-figures', '4.5 / 8']]);
    expect(said('part p "P" 60 / 70 new\n')).toEqual([['two-figures', '60 / 70']]);
  });

  test('a fourth, or one that is missing, is said where it stands', () => {
    expect(said('labour p "P" 4 / 5 / 6 / 7 h\n')).toEqual([['something-missing', '/']]);
    expect(said('labour p "P" 4 /\n')).toEqual([['something-missing', '/']]);
    expect(said('labour p "P" 4 / h\n')).toEqual([['something-missing', 'h']]);
    expect(said('labour p "P" 4 / 5 /\n')).toEqual([['something-missing', '/']]);
    expect(said('labour p "P" 4 / 5 / h\n')).toEqual([['something-missing', 'h']]);
  });

  test('each of the three is read as one alone would be', () => {
    expect(said('labour p "P" 4 / 5h / 6 h\n')).toEqual([['glued-unit', '5h', '5 h']]);
    expect(said('labour p "P" 4 / 5 / 1,200 h\n')).toEqual([['thousands-comma', '1,200', '1200']]);
    expect(said('part p "P" 4 / $5 / 6 new\n')).toEqual([['currency-sign', '$5', '5']]);
  });
});

describe('what a figure measures is said behind it', () => {
  test('three capital letters are a currency, and belong to money', () => {
    expect(jsonOf('part p "P" 64.30 USD new\n')).toMatchObject({ price: { likely: '64.3', unit: 'USD' } });
    expect(said('part p "P" 64.30 eur new\n')).toEqual([['currency-word', '64.30 eur', '64.30 EUR']]);
    expect(said('part p "P" 64.30 GBPX new\n')).toEqual([['unknown-word', 'GBPX']]);
    expect(said('part p "P" 64.30 US new\n').map(([code, marked]) => [code, marked])).toEqual([['unknown-word', 'US']]);
    expect(said('labour p "P"\n  takes 4 USD\n')).toEqual([['wrong-unit', 'USD']]);
    expect(said('labour p "P"\n  apart after 4 EUR\n')).toEqual([['wrong-unit', 'EUR']]);
  });

  test('a bare number is money or a count; hours, waits, distances and percentages need their unit', () => {
    expect(said('vehicle "V"\n  worth 4000\n  model year 2013\n')).toEqual([]);
    expect(said('labour p "P"\n  takes 4.5\n')).toEqual([['unit-missing', '4.5']]);
    expect(said('part p "P" 5 new arrives 3\n')).toEqual([['unit-missing', '3']]);
    expect(said('vehicle "V"\n  odometer 90000\n')).toEqual([['unit-missing', '90000']]);
    expect(said('estimate "E"\n  interest 6\n')).toEqual([['unit-missing', '6']]);
    expect(said('estimate "E"\n  interest 4 / 5 / 6\n')).toEqual([['unit-missing', '4 / 5 / 6']]);
  });

  test('the message names the units that fit', () => {
    expect(saysInstead('labour p "P"\n  takes 4.5\n')).toContain('h or min');
    expect(saysInstead('part p "P" 5 new arrives 3\n')).toContain('d, wk or mo');
    expect(saysInstead('vehicle "V"\n  odometer 90000\n')).toContain('mi or km');
    expect(saysInstead('estimate "E"\n  interest 6\n')).toContain('Write % after it');
    expect(saysInstead('vehicle "V"\n  worth 4000 km\n')).toContain('no unit (it is money)');
  });

  test('a unit of another measure is marked alone', () => {
    expect(said('vehicle "V"\n  worth 4000 km\n')).toEqual([['wrong-unit', 'km']]);
    expect(said('vehicle "V"\n  worth 4000%\n')).toEqual([['wrong-unit', '%']]);
    expect(said('vehicle "V"\n  worth 4000 %\n')).toEqual([['wrong-unit', '%']]);
    expect(said('estimate "E"\n  interest 6 d\n')).toEqual([['wrong-unit', 'd']]);
    expect(said('labour p "P"\n  apart after 4 / 5 / 6 wk\n')).toEqual([['wrong-unit', 'wk']]);
  });

  test('a unit in another spelling is told, wherever it stands', () => {
    expect(said('labour p "P" 4.5 hrs\n')).toEqual([['wrong-unit', 'hrs', 'h']]);
    expect(said('part p "P" 5 new arrives 3 days\n')).toEqual([['wrong-unit', 'days', 'd']]);
    expect(said('labour p "P" 4 / 5 / 6 hours\n')).toEqual([['wrong-unit', 'hours', 'h']]);
  });
});

describe('a figure that is missing', () => {
  test('is asked for where it should stand', () => {
    expect(said('vehicle "V"\n  worth\n')).toEqual([['something-missing', 'worth']]);
    expect(said('vehicle "V"\n  worth much\n')).toEqual([['something-missing', 'much']]);
    expect(said('vehicle "V"\n  worth "4000"\n').map(([code]) => code)).toEqual(['something-missing']);
    expect(said('part p "P" 5 new arrives\n')).toEqual([['something-missing', 'arrives']]);
  });

  test('a message says how it is written', () => {
    expect(saysInstead('vehicle "V"\n  worth\n')).toContain('64.30');
    expect(saysInstead('labour p "P" 4 /\n')).toContain('4.5 / 5.5 / 8 h');
    expect(saysInstead('vehicle "V"\n  odometer 4 /\n')).toContain('4.5 / 5.5 / 8 h'); // a distance has no example of three
    for (const cut of ['4 /', '4 / 5 /', '4 / 5 / 6 / 7']) {
      expect(saysInstead(`vehicle "V"\n  worth ${cut}\n`)).toContain('1450 / 1650 / 2400');
      expect(saysInstead(`vehicle "V"\n  odometer ${cut}\n`)).toContain('4.5 / 5.5 / 8 h');
    }
    expect(saysInstead('estimate "E"\n  interest 6\n')).toContain('after it: 6%.');
    expect(saysInstead('option o "O"\n  chance c "C" 0.2\n')).toContain('after it: 20% where that is meant, or else 0.2%.');
    expect(saysInstead('part p "P" 5 new\n  arrives 1 / 2 / 3\n')).toContain('such as 3 d');
    expect(saysInstead('vehicle "V"\n  odometer 6\n')).toContain('such as 131400 mi');
    expect(saysInstead('part p "P" 5 new arrives 3\n')).toContain('such as 3 d');
  });
});

/** What the first message on a text says to write. */
function saysInstead(text: string): string {
  return messagesOf(text)[0]?.instead ?? '';
}
