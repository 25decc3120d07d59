import { describe, expect, test } from 'vitest';
import type { Labour, Mode, Rate } from '../../src/estimate/index.js';
import { currencyOf, Decimal, type Currency } from '../../src/vocabulary/index.js';
import { moneyOf } from '../../src/weigh/index.js';
import { labourLine } from '../../src/weigh/price-labour.js';
import { readSound } from './weighed.js';

// Hours of work, and the days that are made of them. Sums by hand.

const text = (workday: string, work = '  labour "Work" 16 h\n') => `steelyard 1\nshop "Invented Bay"\n  currency USD\n${workday}  rate bench 100.00\nestimate "E"\n  start 2026-11-30\noption one "One"\n${work}`;

test('a working day in minutes is one in hours: 16 h are two of 480 min, four of 240 min', () => {
  const days = (workday: string) => readSound(text(workday)).option('one').ready.days.likely.toFixed();
  expect(['', '  workday 8 h\n', '  workday 480 min\n', '  workday 240 min\n'].map(days)).toEqual(['2', '2', '2', '4']);
});

test('the hours of an option are those of its work, whatever unit they are written in; parts and fees have none', () => {
  const { hours } = readSound(text('', '  labour "Work" 1.5 h\n  labour "More" 3 at 20 min\n  part "Hose" 20.00 new\n  fee "Tow" 40.00\n')).option('one').totals;
  expect([hours.likely.toFixed(), hours.from.flatMap(({ from }) => from.map(({ label }) => label))]).toEqual(['2.5', ['Time', 'More, hours']]);
});

test('putting a core together and the hire of a tool take no way in, though the work beside them does', () => {
  const facts = '  labour "Work" 2 h with out\n    needs lock\n  part "Unit" 20.00 rebuilt\n    core 7.00\n      assemble 1 h\n';
  const { lines } = readSound(text('', facts).replace('option one', 'access out "Engine out"\n  remove 1 h\ntool lock "Lock" 30.00\noption one')).option('one').totals;
  expect(lines.map(({ title, with: ways }) => `${title}: ${ways.join()}`)).toEqual(['Engine out: remove: out', 'Work: out', 'Unit: ', 'Unit: core charge: ', 'Unit: put the core together: ', 'Lock: hire: ']);
});

describe('work that was priced once', () => {
  const dollars = currencyOf('USD') as Currency;
  const money = { 'half-up': moneyOf(dollars, 'half-up'), 'half-down': moneyOf(dollars, 'half-down') };
  const [planned] = readSound(text('', '  labour "Work" 0.255 h\n')).option('one').planned.chosen.jobs;
  const { job, mode } = planned as { readonly job: Labour; readonly mode: Mode };
  const at = (price: number): Labour => ({ ...job, rate: { ...(job.rate as Rate), price: { ...(job.rate as Rate).price, likely: new Decimal(price) } } });
  const priceOf = (one: Labour, rounding: keyof typeof money) => labourLine(one, mode, money[rounding]).amount.likely.toFixed(2);

  test('is priced anew at another rate, and in another rounding', () => {
    expect([job, at(200), job].map((one) => priceOf(one, 'half-up'))).toEqual(['25.50', '51.00', '25.50']);
    // 0.255 h at 1.00 an hour are 0.255.
    const cheap = at(1);
    expect([priceOf(cheap, 'half-up'), priceOf(cheap, 'half-down'), priceOf(cheap, 'half-up')]).toEqual(['0.26', '0.25', '0.26']);
  });
});

test('the cheaper way in is chosen by all pieces of a job, not by one', () => {
  // In the car four times 1 h; with the engine raised 2 h for that, and four times 0.25 h. For one piece the car is cheaper.
  const way = (count: string) => readSound(text('', '  do plugs\n').replace('option one', `access up "Engine raised"\n  remove 2 h\nlabour plugs "Plugs"${count} 1 h\n  takes 0.25 h with up\noption one`)).option('one');
  expect(way(' 4 at').planned.chosen.paid.map(({ name }) => name)).toEqual(['up']);
  expect(way(' 4 at').totals.total.likely.toFixed()).toBe('300');
  expect(way('').planned.chosen.paid).toEqual([]);
});
