import { describe, expect, it } from 'vitest';
import { readSound } from './weighed.js';

/** Parts at these prices under one tax; what the tax comes to. */
function tax(prices: readonly string[], percent: string, by: 'item' | 'invoice'): string {
  const lines = prices.map((price) => `  part "Part" ${price} new`).join('\n');
  return readSound(`steelyard 1\nshop "S"\n  currency USD\n  tax sales ${percent} on parts by ${by}\noption one "One"\n${lines}\n`).option('one').totals.tax.likely.toFixed(2);
}

function total(text: string, option = 'one'): string {
  return readSound(text).option(option).totals.total.likely.toFixed(2);
}

describe('tax by item and by invoice: SSUTA section 324 (rule read, sums computed from it)', () => {
  it('twice 10.07 at 5 % is 1.00 by item and 1.01 by invoice', () => {
    expect([tax(['10.07', '10.07'], '5%', 'item'), tax(['10.07', '10.07'], '5%', 'invoice')]).toEqual(['1.00', '1.01']);
  });

  it('125.50 + 89.95 + 43.30 at 8.25 % is 21.34 by item and 21.35 by invoice', () => {
    const prices = ['125.50', '89.95', '43.30'];
    expect([tax(prices, '8.25%', 'item'), tax(prices, '8.25%', 'invoice')]).toEqual(['21.34', '21.35']);
  });

  it('1.0046 is 1.00: the third decimal is not rounded up first', () => {
    expect([tax(['100.46'], '1%', 'item'), tax(['100.46'], '1%', 'invoice')]).toEqual(['1.00', '1.00']);
    // 1.0046 made 1.005 and then 1.01 would be rounded twice; 1.0050 itself goes up.
    expect(tax(['100.50'], '1%', 'invoice')).toBe('1.01');
  });

  it('by invoice is what holds where nothing is said (computed)', () => {
    const text = (by: string) => `steelyard 1\nshop "S"\n  tax sales 5% on parts${by}\noption one "One"\n  part "A" 10.07 new\n  part "B" 10.07 new\n`;
    expect([total(text('')), total(text(' by invoice')), total(text(' by item'))]).toEqual(['21.15', '21.15', '21.14']);
  });
});

describe('what is taxed (computed)', () => {
  const text = (on: string) => `steelyard 1\nshop "S"\n  rate bench 100.00\n  tax one 10% on ${on}\n  fee "Supplies" 20.00\naccess out "Out"\n  remove 1 h\n  part "Seal" 30.00 new\noption one "One"\n  labour "Work" 2 h with out\n  part "Part" 70.00 new\n  sublet "Machining" 50.00\n`;
  const taxOn = (on: string) => readSound(text(on)).option('one').totals.tax.likely.toFixed(2);

  it.each([['parts', '10.00'], ['labour', '30.00'], ['sublets', '5.00'], ['fees', '2.00'], ['parts, labour', '40.00'], ['parts, labour, sublets, fees', '47.00']])('%s, the way in included', (on, expected) => {
    expect(taxOn(on)).toBe(expected);
  });

  it('taxes stand side by side: none is charged on another', () => {
    const two = 'steelyard 1\nshop "S"\n  tax a 10% on parts\n  tax b 5% on parts by item\noption one "One"\n  part "Part" 100.00 new\n';
    expect(total(two)).toBe('115.00');
  });

  it('parts that the customer brings are neither charged nor taxed', () => {
    expect(total('steelyard 1\nshop "S"\n  tax a 10% on parts\noption one "One"\n  part "Part" 100.00 customer-supplied\n')).toBe('0.00');
  });
});

describe('fees (computed)', () => {
  const shop = (fees: string) => `steelyard 1\nshop "S"\n  rate bench 100.00\n${fees}\nfee tow "Tow" 120.00\n`;

  it('a percentage of labour takes the way in and putting a core together too, and stops at its cap', () => {
    const text = (cap: string) => `${shop(`  fee "Supplies" 5% of labour${cap}`)}access out "Out"\n  remove 3 h\noption one "One"\n  labour "Work" 2 h with out\n  part "Unit" 10.00 used\n    core 5.00\n      assemble 1 h\n`;
    expect([total(text('')), total(text(' cap 12.34'))]).toEqual(['645.00', '627.34']);
  });

  it('fees of the shop are charged once, and only where there is labour', () => {
    const text = `${shop('  fee oil "Oil" 14.50')}option one "One"\n  charge tow, oil\n  labour "Work" 1 h\noption two "Two"\n  charge tow\n`;
    expect([total(text), total(text, 'two')]).toEqual(['234.50', '120.00']);
  });

  it('days of storage: 3 d at 25.00', () => {
    expect(total('steelyard 1\noption one "One"\n  fee "Storage" 3 d at 25.00\n')).toBe('75.00');
  });

  it('a percentage of several sums is taken of their sum and rounded once', () => {
    // 1.5 % of 10.10 + 10.10 + 10.10 = 0.4545; of each alone it would be 0.15 three times.
    expect(total('steelyard 1\nshop "S"\n  rate bench 10.10\noption one "One"\n  labour "W" 1 h\n  part "P" 10.10 new\n  sublet "S" 10.10\n  fee "F" 1.5% of labour, parts, sublets\n')).toBe('30.75');
  });
});
