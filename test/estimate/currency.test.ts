import { describe, expect, test } from 'vitest';
import { currencyOf } from '../../src/vocabulary/index.js';
import { called, resolved, told } from './estimated.js';

// ISO 4217, minor units (from memory); a sample of each number of decimals.
describe('a currency has the decimals of its smallest coin', () => {
  test.each([['USD', 2], ['EUR', 2], ['GBP', 2], ['CHF', 2], ['AED', 2], ['ZMW', 2], ['JPY', 0], ['KRW', 0], ['CLP', 0], ['BIF', 0], ['XPF', 0], ['KWD', 3], ['BHD', 3], ['TND', 3]])('%s: %i', (code, digits) => {
    expect(currencyOf(code)).toEqual({ code, digits });
  });

  test.each(['', 'usd', 'US', 'USDD', 'XXX', 'AAA', 'USD EUR', 'constructor'])('“%s” is none', (code) => {
    expect(currencyOf(code)).toBeUndefined();
  });

  test('as the platform knows it, where the two lists agree on the coin', () => {
    // Unicode (CLDR) counts no coin for some whose coins are out of use; ISO 4217 still does. All others are the same.
    const others = Intl.supportedValuesOf('currency').flatMap((code) => {
      const [own, platform] = [currencyOf(code)?.digits, new Intl.NumberFormat('en', { style: 'currency', currency: code }).resolvedOptions().maximumFractionDigits];
      return own === undefined || own === platform || (platform === 0 && own > 0) ? [] : [code];
    });
    expect(others).toEqual([]);
  });
});

describe('a shop’s currency', () => {
  const shop = (currency: string, rest = '') => resolved(`steelyard 1\nshop "S"\n  currency ${currency}\n  rate r 100.00\n${rest}`);

  test('says how amounts are counted', () => {
    expect(shop('JPY').estimate.shop.currency).toEqual({ code: 'JPY', digits: 0 });
    expect(told(shop('JPY'))).toEqual([]);
  });

  test('that nobody knows is told, and two decimals are used', () => {
    expect(told(shop('ZZZ'))).toEqual([['unknown-currency', 'ZZZ']]);
    expect(shop('ZZZ').estimate.shop.currency.digits).toBe(2);
  });

  test('is the only one for amounts, on a line or below it', () => {
    const lines = 'part a "A" 5.00 USD new\npart b "B" 5.00 EUR new\n  core 10.00 USD\npart c "C" 5.00 EUR new\n';
    expect(told(shop('EUR', lines))).toEqual([['other-currency', '5.00 USD'], ['other-currency', '10.00 USD']]);
    expect(called(shop('EUR', lines).estimate.parts)).toEqual(['a', 'b', 'c']);
  });

  test('that is not named lets no amount name one', () => {
    expect(told(resolved('steelyard 1\npart a "A" 5.00 USD new\n'))).toEqual([['other-currency', '5.00 USD']]);
    // The line that names it can't be read, which is told already.
    expect(told(resolved('steelyard 1\nshop "S"\n  currency ‘USD\npart a "A" 5.00 USD new\n')).map(([code]) => code)).toEqual(['strange-character']);
    expect(told(shop('ZZZ', 'part a "A" 5.00 USD new\n'))).toEqual([['unknown-currency', 'ZZZ']]);
  });
});

describe('three decimals behind one to three digits', () => {
  const shop = (currency: string, line: string) => told(resolved(`steelyard 1\nshop "S"\n  rate r 100.00\n${currency === '' ? '' : `  currency ${currency}\n`}${line}\n`));
  const doubted = (figure: string) => [['thousands-point', figure]];

  test.each(['EUR', 'JPY', ''])('could mean thousands in %s, wherever money stands', (currency) => {
    expect(shop(currency, 'part p "P" 1.250 new')).toEqual(doubted('1.250'));
    expect(shop(currency, 'part p "P" 3 at cost 12.350 new')).toEqual(expect.arrayContaining(doubted('12.350')));
    expect(shop(currency, '  rate s 1.100 usual')).toEqual(doubted('1.100'));
    expect(shop(currency, '  fee f "F" 5% of labour cap 1.000')).toEqual(doubted('1.000'));
    expect(shop(currency, 'vehicle "V"\n  worth 9.000')).toEqual(doubted('9.000'));
  });

  test('in a range the figures are marked together, without the currency behind them', () => {
    expect(shop('EUR', 'part p "P" 1.250 / 1.400 / 1600 EUR new')).toEqual(doubted('1.250 / 1.400 / 1600'));
  });

  test('and distances; no others', () => {
    expect(shop('EUR', 'vehicle "V"\n  odometer 90.000 km')).toEqual(doubted('90.000'));
    expect(shop('EUR', 'coverage c "C" recall\n  up to 150.000 km')).toEqual(doubted('150.000'));
    expect(shop('EUR', 'labour l "L" 1.125 h\npart oil "Oil" 4.125 L at 9.00 new\n  arrives 1.125 d\nfinding f "F"\n  compression 10.125 10.250 bar')).toEqual([]);
  });

  test.each(['0.125', '1.1250', '1250.125', '1.25', '1250', '1.12500', '012.125'])('%s says what it says', (figure) => {
    expect(shop('EUR', `part p "P" ${figure} new`)).toEqual([]);
  });

  test('is how money is written where the smallest coin is a thousandth', () => {
    expect(shop('KWD', 'part p "P" 1.250 new\npart q "Q" 1.250 KWD new')).toEqual([]);
    expect(shop('KWD', 'vehicle "V"\n  odometer 90.000 km')).toEqual(doubted('90.000'));
  });

  test('is not told where the shop’s currency could not be read', () => {
    expect(shop('ZZZ', 'part p "P" 1.250 new')).toEqual([['unknown-currency', 'ZZZ']]);
    expect(told(resolved('steelyard 1\nuse "missing.yard"\npart p "P" 1.250 new\n')).map(([code]) => code)).toEqual(['use-missing']);
  });

  test('an amount in another currency has one message', () => {
    expect(shop('EUR', 'part p "P" 1.250 USD new')).toEqual([['other-currency', '1.250 USD']]);
  });
});
