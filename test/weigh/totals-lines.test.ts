import { describe, expect, test } from 'vitest';
import { explain } from '../../src/report/index.js';
import type { Weighed } from '../../src/weigh/index.js';
import { readSound } from './weighed.js';

// What an option comes to, group by group and tax by tax. Sums by hand; that a shop's own fees go with labour, and that a
// part's core is no part of getting in, is common practice.

const SHOP = 'steelyard 1\nshop "Invented Bay"\n  currency USD\n  rate bench 100.00\n';
const one = (text: string): Weighed => readSound(text).option('one');

/** The groups of a total that come to something, and the hours. */
function groups({ totals }: Weighed): Readonly<Record<string, string>> {
  const { access, labour, parts, sublets, fees, cores, tax, total, hours, accessHours } = totals;
  const all = Object.entries({ access, labour, parts, sublets, fees, cores, tax, total, hours, accessHours });
  return Object.fromEntries(all.flatMap(([name, { likely }]) => (likely.isZero() ? [] : [[name, likely.toFixed()]])));
}

const titles = ({ totals: { lines } }: Weighed) => lines.map(({ title }) => title);

describe('getting in', () => {
  const way = 'access out "Engine out"\n  remove 3 h\n  refit 2 h\n  part "Mount" 40.00 rebuilt\n    core 7.00\n      assemble 30 min\n';

  test('is the hours, parts and outside work of the way in; the core of such a part, and putting it together, are not', () => {
    expect(groups(one(`${SHOP}${way}option one "One"\n  labour "Work" 1 h with out\n`))).toEqual({ access: '540', labour: '150', cores: '7', total: '697', hours: '6.5', accessHours: '5' });
  });

  test('is labour too: with nothing else done, the shop charges its fees', () => {
    const fees = SHOP.replace('  rate', '  fee "Supplies" 30.00\n  rate');
    const pinned = (ways: string) => one(`${fees}access out "Engine out"\n  remove 3 h\noption one "One"\n${ways}  part "Cover" 10.00 new\n`);
    expect(groups(pinned('  way out\n'))).toMatchObject({ access: '300', fees: '30', total: '340' });
    expect(groups(pinned(''))).toEqual({ parts: '10', total: '10' });
  });
});

test('a fee that comes to nothing is no line of the quote; one that comes to something is', () => {
  const fees = SHOP.replace('  rate', '  fee "Supplies" 5% of parts\n  fee "Oil" 14.50\n  rate');
  expect(titles(one(`${fees}option one "One"\n  labour "Work" 1 h\n`))).toEqual(['Work', 'Oil']);
  expect(titles(one(`${fees}option one "One"\n  labour "Work" 1 h\n  part "Hose" 20.00 new\n`))).toEqual(['Work', 'Hose', 'Supplies', 'Oil']);
  // It may only come to nothing as quoted: from none to four pieces it can cost up to 4.00.
  expect(titles(one(`${fees}option one "One"\n  labour "Work" 1 h\n  part "Bolt" 0 / 0 / 4 at 20.00 new\n`))).toContain('Supplies');
});

describe('a tax by item', () => {
  const lines = 'option one "One"\n  labour "Work" 1 h\n  part "Unit" 10.10 rebuilt\n    core 10.10\n  sublet "Machining" 10.10\n  fee "Tow" 10.10\n';
  const shop = (on: string, policy = '') => SHOP.replace('  rate', `  tax gst "GST" 5% on ${on} by item\n${policy}  rate`);
  /** What it is added up from. */
  const made = (text: string) => {
    const { comparison, option } = readSound(text);
    const [tax] = option('one').totals.taxes;
    return tax === undefined ? [] : explain(tax.amount, comparison.money, () => undefined).filter(({ depth }) => depth < 2).map((row) => row.text);
  };

  test('is rounded on each line that it is charged on, and on no other', () => {
    // 5 % of 10.10 are 0.505, so 0.51 each.
    expect(made(shop('parts, labour, sublets, fees') + lines)).toEqual(['GST: 6.53', 'GST on Work: 5.00', 'GST on Unit: 0.51', 'GST on Machining: 0.51', 'GST on Tow: 0.51']);
    expect(made(shop('sublets') + lines)).toEqual(['GST: 0.51', 'GST on Machining: 0.51']);
    expect(made(shop('fees') + lines)).toEqual(['GST: 0.51', 'GST on Tow: 0.51']);
    expect(made(shop('labour') + lines)).toEqual(['GST: 5.00', 'GST on Work: 5.00']);
  });

  test('is charged on a core once, by the shop’s policy and with the parts', () => {
    const kept = '  core-tax kept on rebuilt\n';
    expect(made(shop('parts', kept) + lines)).toEqual(['GST: 1.02', 'GST on Unit: 0.51', 'GST on core charges: 0.51']);
    expect(made(shop('labour', kept) + lines)).toEqual(['GST: 5.00', 'GST on Work: 5.00']);
    expect(made(shop('parts', '  core-tax none\n') + lines)).toEqual(['GST: 0.51', 'GST on Unit: 0.51']);
  });
});

test('a tax by invoice is charged on the sums that it names, and on cores where the shop’s policy says so', () => {
  const base = (on: string, policy: string) => {
    const [tax] = one(`${SHOP.replace('  rate', `  tax sales "Sales tax" 5% on ${on}\n  core-tax ${policy}\n  rate`)}option one "One"\n  labour "Work" 1 h\n  part "Unit" 10.10 rebuilt\n    core 10.10\n`).totals.taxes;
    return tax?.amount.from[0]?.from.map(({ label, likely }) => `${label}: ${likely.toFixed()}`);
  };
  expect(base('parts', 'kept')).toEqual(['Parts: 10.1', 'Taxed core charges: 10.1']);
  expect(base('parts', 'none')).toEqual(['Parts: 10.1']);
  expect(base('labour', 'kept')).toEqual(['Labour on the work: 100']);
});

test('one part is for getting in where the way in brings it, and a part of the work where that does', () => {
  const { option } = readSound(`${SHOP}part mount "Mount" 40.00 new\naccess out "Engine out"\n  remove 1 h\n  uses mount\noption one "One"\n  labour "Work" 1 h with out\noption two "Two"\n  labour "Other work" 1 h\n  fit mount\n`);
  expect([groups(option('one')), groups(option('two'))]).toMatchObject([{ access: '140', total: '240' }, { parts: '40', total: '140' }]);
  expect(['one', 'two'].map((name) => option(name).totals.lines.find(({ title }) => title === 'Mount')?.share)).toEqual(['access', 'work']);
});
