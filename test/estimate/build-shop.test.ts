import { describe, expect, test } from 'vitest';
import { called, resolved, told, wordsOf } from './estimated.js';

const shop = (...lines: readonly string[]) => resolved(`steelyard 1\nshop "Corner Bay"\n${lines.map((line) => `  ${line}\n`).join('')}`);
const of = (...lines: readonly string[]) => shop(...lines).estimate.shop;

describe('what a shop says of itself', () => {
  test('goes to the head of a quote', () => {
    const { title, address, phone, locale } = of('address "1 Quay Lane", "Portside"', 'address "Upstairs"', 'phone "555 0100"', 'locale en-gb');
    expect([title, address, phone, locale]).toEqual(['Corner Bay', ['1 Quay Lane', 'Portside', 'Upstairs'], '555 0100', 'en-GB']);
  });

  // BCP 47, as the platform reads it.
  test('a language that is no tag is told, and en-US is used', () => {
    expect(told(shop('locale en_GB')).map(([code]) => code)).toEqual(['unknown-locale']);
    expect(of('locale en_GB').locale).toBe('en-US');
    expect(told(shop('locale german'))).toEqual([['unknown-locale', 'german']]);
    expect(of('locale german').locale).toBe('en-US');
    expect([of('locale de-DE').locale, of('locale de').locale]).toEqual(['de-DE', 'de']);
    expect(of().locale).toBe('en-US');
  });

  test('what is usual holds where it says nothing', () => {
    const { rounding, technicians, workday, closedWeekdays, closedDates, usualRate, overrun, currency } = of();
    expect([rounding, technicians, workday, [...closedWeekdays], [...closedDates], usualRate, overrun, currency]).toEqual(['half-up', 1, undefined, [0, 6], [], undefined, undefined, { code: '', digits: 2 }]);
    expect(of('rounding half-even', 'technicians 3')).toMatchObject({ rounding: 'half-even', technicians: 3 });
  });

  test('the days on which nobody works are days of the week, dates, or both', () => {
    const closed = (...lines: readonly string[]) => [[...of(...lines).closedWeekdays].sort(), [...of(...lines).closedDates]];
    expect(closed('closed sunday, monday')).toEqual([[0, 1], []]);
    expect(closed('closed sunday, monday, tuesday, wednesday, thursday, friday, saturday')).toEqual([[0, 1, 2, 3, 4, 5, 6], []]);
    expect(closed('closed 2026-12-25')).toEqual([[0, 6], ['2026-12-25']]); // the usual weekend stays
    expect(closed('closed saturday', 'closed 2026-12-25, 2026-12-26')).toEqual([[6], ['2026-12-25', '2026-12-26']]);
  });
});

describe('rates', () => {
  test('the only one is the usual one; of several the one that is marked', () => {
    expect(of('rate bench 100.00').usualRate?.name).toBe('bench');
    expect(of('rate bench 100.00', 'rate body 90.00').usualRate).toBeUndefined();
    expect(of('rate bench 100.00', 'rate body "Bodywork" 90.00 usual cost 40.00').usualRate).toMatchObject({ name: 'body', title: 'Bodywork' });
    expect(of('rate bench 100.00', 'rate body 90.00 usual').usualRate?.cost).toBeUndefined();
    expect(of('rate bench 100.00').usualRate?.title).toBe('bench');
  });

  test('two that are marked are told, and the first holds', () => {
    expect(told(shop('rate bench 100.00 usual', 'rate body 90.00 usual'))).toEqual([['usual-twice', 'usual', 'rate bench 100.00 usual']]);
    expect(of('rate bench 100.00 usual', 'rate body 90.00 usual').usualRate?.name).toBe('bench');
  });

  test('of two with one name the first holds', () => {
    const twice = shop('rate bench 100.00', 'rate bench 90.00');
    expect(told(twice)).toEqual([['name-taken', 'bench', 'bench']]);
    expect([...twice.estimate.shop.rates].map(([name, { price }]) => [name, price.likely.toFixed()])).toEqual([['bench', '100']]);
  });

  test('one without a price is told, and is no rate', () => {
    expect(told(shop('rate bench', 'rate body 90.00'))).toEqual([['amount-missing', 'rate bench']]);
    expect(of('rate bench', 'rate body 90.00').usualRate?.name).toBe('body');
    expect(told(shop('rate bench 1,000')).map(([code]) => code)).toEqual(['thousands-comma']);
  });
});

describe('markup', () => {
  const bands = (on: 'parts' | 'sublets', ...lines: readonly string[]) => of(...lines).markup[on].map(({ percent, upTo }) => [percent.likely.toFixed(), upTo?.likely.toFixed(2)]);

  test('lines go by where they end, the one without an end last', () => {
    expect(bands('parts', 'markup 20%', 'markup 50% to 250.00', 'markup 80% to 9.50', 'markup 70% to 100.00')).toEqual([['80', '9.50'], ['70', '100.00'], ['50', '250.00'], ['20', undefined]]);
    expect(bands('parts', 'markup 50% to 250.00', 'markup 20%')).toEqual([['50', '250.00'], ['20', undefined]]);
  });

  test('is for parts, or for outside work where it says so', () => {
    const lines = ['markup 50%', 'markup 30% on sublets', 'markup 60% to 10.00 on parts'];
    expect(bands('parts', ...lines)).toEqual([['60', '10.00'], ['50', undefined]]);
    expect(bands('sublets', ...lines)).toEqual([['30', undefined]]);
    expect(told(shop(...lines))).toEqual([]);
  });

  test('of two that end alike the first holds', () => {
    expect(told(shop('markup 50% to 100', 'markup 40% to 100.00'))).toEqual([['markup-twice', 'markup 40% to 100.00', 'markup 50% to 100']]);
    expect(told(shop('markup 50%', 'markup 40%'))).toEqual([['markup-twice', 'markup 40%', 'markup 50%']]);
    expect(bands('parts', 'markup 50%', 'markup 40%')).toEqual([['50', undefined]]);
  });

  test('without its percentage is told, once', () => {
    expect(told(shop('markup to 100.00'))).toEqual([['amount-missing', 'markup to 100.00']]);
    expect(told(shop('markup 5 to 100.00')).map(([code]) => code)).toEqual(['unit-missing']);
    expect(bands('parts', 'markup to 100.00')).toEqual([]);
  });
});

describe('taxes', () => {
  test('say their rate, what they are charged on and how they are rounded', () => {
    const [sales, work] = of('tax sales "Sales tax" 7.25% on parts, fees', 'tax work 5% on labour by item').taxes;
    expect([sales?.title, sales?.percent.likely.toFixed(), [...(sales?.on ?? [])], sales?.basis]).toEqual(['Sales tax', '7.25', ['parts', 'fees'], 'invoice']);
    expect([work?.title, [...(work?.on ?? [])], work?.basis]).toEqual(['work', ['labour'], 'item']);
  });

  test('one that lacks either is told and left out', () => {
    for (const line of ['tax sales 7.25%', 'tax sales on parts', 'tax sales']) {
      expect(told(shop(line))).toEqual([['tax-unclear', line]]);
      expect(of(line).taxes).toEqual([]);
    }
    expect(told(shop('tax sales 7,25% on parts')).map(([code]) => code)).toEqual(['thousands-comma']);
  });

  test('of two with one name one is charged', () => {
    const twice = shop('tax sales 7.25% on parts', 'tax sales 5% on parts');
    expect(told(twice)).toEqual([['name-taken', 'sales', 'sales']]);
    expect(twice.estimate.shop.taxes.map(({ percent }) => percent.likely.toFixed())).toEqual(['7.25']);
  });
});

describe('tax on a core', () => {
  const policies = (...lines: readonly string[]) => Object.fromEntries([...of(...lines).coreTax].map(([condition, { policy }]) => [condition, policy]));

  test('goes by the condition of the part, or is for all', () => {
    expect(policies('core-tax refunded on used, rebuilt', 'core-tax kept on new')).toEqual({ used: 'refunded', rebuilt: 'refunded', new: 'kept' });
    expect(policies('core-tax none')).toEqual({ new: 'none', aftermarket: 'none', rebuilt: 'none', used: 'none', 'customer-supplied': 'none' });
  });

  test('said twice for a condition, the first holds for it', () => {
    const lines = ['core-tax refunded on used, rebuilt', 'core-tax kept on new, used'];
    expect(told(shop(...lines))).toEqual([['only-once', 'core-tax kept on new, used', 'core-tax refunded on used, rebuilt']]);
    expect(wordsOf(shop(...lines), 'only-once')).toContain('for used');
    expect(policies(...lines)).toEqual({ used: 'refunded', rebuilt: 'refunded', new: 'kept' });
  });

  test('that says nothing is told', () => {
    expect(told(shop('core-tax on used'))).toEqual([['amount-missing', 'core-tax on used']]);
    expect(told(shop('core-tax kpt on used')).map(([code]) => code)).toEqual(['unknown-word']);
    expect(policies('core-tax on used')).toEqual({});
  });
});

describe('fees and tools', () => {
  test('of the shop are in every estimate; its tools are there already', () => {
    const { fees, tools } = of('fee disposal "Disposal" 5.00', 'tool bar "Engine bar"', 'tool pins');
    expect([called(fees), tools.map(({ name, title, owned }) => [name, title, owned])]).toEqual([['disposal'], [['bar', 'Engine bar', true], ['pins', 'pins', true]]]);
  });

  test('a fee or a tool of the shop is one thing, wherever it is named', () => {
    const { shop: own, fees, tools, options, labour } = resolved('steelyard 1\nshop "S"\n  rate r 1.00\n  fee disposal "Disposal" 5.00\n  tool bar "Bar"\nfee tow "Tow" 1.00\ntool lock "Lock"\nlabour l "L" 1 h needs bar\noption o "O"\n  charge disposal, tow\n').estimate;
    expect(options[0]?.fees[0]).toBe(own.fees[0]);
    expect(labour[0]?.tools[0]).toBe(own.tools[0]);
    expect([called(fees), called(tools)]).toEqual([['tow'], ['lock']]);
  });

  test('a tool that is not the shop’s has a price and takes days to come', () => {
    const [tool] = resolved('steelyard 1\ntool lock "Lock set" 60.00 arrives 2 d\n').estimate.tools;
    expect([tool?.owned, tool?.price?.likely.toFixed(), tool?.arrives?.likely.toFixed()]).toEqual([false, '60', '2']);
  });
});

describe('lines that every option is worked out with', () => {
  test.each([['rate', 100, (i: number) => `rate r${i} 1.00`], ['tax', 40, (i: number) => `tax t${i} 1% on parts`], ['fee', 40, (i: number) => `fee f${i} "F" 1.00`], ['markup', 200, (i: number) => `markup 1% to ${i + 1}.00`]] as const)('up to the most of each: %s, %i', (word, most, line) => {
    const lines = (count: number) => Array.from({ length: count }, (_, i) => line(i));
    const counted = (count: number) => {
      const { rates, taxes, fees, markup } = of(...lines(count));
      return { rate: rates.size, tax: taxes.length, fee: fees.length, markup: markup.parts.length }[word];
    };
    expect(told(shop(...lines(most)))).toEqual([]);
    expect(counted(most)).toBe(most);
    expect(told(shop(...lines(most + 2)))).toEqual([['too-many-of-shop', line(most)]]);
    expect(counted(most + 2)).toBe(most);
  });

  test('without a shop there is none of it', () => {
    const { shop: none } = resolved('steelyard 1\npart p "P" 1.00 new\n').estimate;
    expect(none).toMatchObject({ source: undefined, title: '', address: [], locale: 'en-US', technicians: 1, rounding: 'half-up', taxes: [], fees: [], tools: [], markup: { parts: [], sublets: [] } });
    expect([[...none.closedWeekdays], none.closedDates.size, none.rates.size, none.coreTax.size]).toEqual([[0, 6], 0, 0, 0]);
  });
});
