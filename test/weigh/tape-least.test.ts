import { describe, expect, test } from 'vitest';
import { currencyOf, type Currency } from '../../src/vocabulary/index.js';
import { Decimal, type Amount } from '../../src/vocabulary/index.js';
import { besideLeast, given, hoursProduct, product, raised, sum, times, type Figure } from '../../src/weigh/figure.js';
import { moneyOf } from '../../src/weigh/index.js';
import { createTape, type Leaf, type MarkupTables } from '../../src/weigh/tape.js';

// Flip points are searched on the tape, so it must choose a way in as the quote does. Figures by hand.

const cents = moneyOf(currencyOf('USD') as Currency, 'half-up');

function written(value: number): Amount {
  const point = new Decimal(value);
  return { low: point, likely: point, high: point, unit: undefined, at: {} } as Amount;
}

const money = (value: number) => given('Price', 'money', written(value));
const hours = (value: number) => given('Time', 'hours', written(value));

describe('the hours of the way that costs least', () => {
  test.each<[string, readonly number[], readonly [number, ...number[]], number]>([
    ['the cheaper way, though a dearer one takes fewer hours', [8, 9], [3, 1], 3],
    ['the cheaper way, though it stands last and takes more hours', [9, 10, 8], [1, 2, 3], 3],
    ['of equal ones the fewest hours, standing first', [8, 8], [2, 3], 2],
    ['of equal ones the fewest hours, standing last', [8, 8, 8], [3, 4, 2], 2],
  ])('%s', (_, amounts, [first, ...others], wanted) => {
    const figure = besideLeast('Hours', amounts.map(money), [hours(first), ...others.map(hours)]);
    const tape = createTape(cents, 'half-up');
    expect([tape.valueOf(tape.node(figure)), figure.likely.toNumber()]).toEqual([wanted, wanted]);
  });

  test('go over to the other way when its price comes down to the same, where that takes fewer hours', () => {
    const [one, other] = [money(8), money(9)];
    const tape = createTape(cents, 'half-up');
    const node = tape.node(besideLeast('Hours', [one, other], [hours(3), hours(1)]));
    const leaf = tape.leafAt(other.at as NonNullable<Figure['at']>) as Leaf;
    const at = (price: number) => {
      tape.set(leaf, price);
      tape.runFrom(leaf);
      return tape.valueOf(node);
    };
    expect([8.01, 8, 7.99].map(at)).toEqual([3, 1, 1]);
  });
});

describe('a cost and its markup', () => {
  const cost = written(0.35);
  const table = [{ percent: written(50), upTo: undefined }] as unknown as NonNullable<ReturnType<MarkupTables['get']>>;
  const price = raised('Price from cost', given('Cost', 'money', cost), given('Markup', 'percent', (table[0] as (typeof table)[number]).percent));

  test.each<[string, MarkupTables]>([['with the table of the markup', new Map([[cost.at, table]])], ['without it', new Map()]])('are not rounded before the line is, %s', (_, tables) => {
    // Three pieces at 0.525 are 1.575, so 1.58; rounded first they would be 1.59.
    const line = product('Bolt', [given('Quantity', 'number', written(3)), price], cents, undefined);
    const tape = createTape(cents, 'half-up', tables);
    expect([tape.valueOf(tape.node(line)), line.likely.toNumber()]).toEqual([1.58, 1.58]);
  });

  test('are put together once: what is made of the price is not raised again, though it says it stands at the same place', () => {
    const line = product('Bolt', [price], cents, cost.at);
    const tape = createTape(cents, 'half-up', new Map([[cost.at, table]]));
    expect(tape.valueOf(tape.node(sum('Parts', 'money', [line])))).toBe(0.53);
  });
});

test('what is weighed by a chance is not rounded: 0.35 a piece at 5 % are 0.0175, as a figure and on the tape', () => {
  const figure = times('Expected', 'money', [money(0.35), money(0.05)]);
  expect(figure.step).toEqual({ kind: 'product', per: 1, rounded: false });
  const tape = createTape(cents, 'half-up');
  expect([tape.valueOf(tape.node(figure)), figure.likely.toNumber()]).toEqual([expect.closeTo(0.0175, 12), 0.0175]);
});

test('minutes are hours on the tape too, and a line that says where it stands still follows its figures', () => {
  const minutes = given('Time', 'minutes', written(45));
  const time = hoursProduct('Work, hours', [minutes], 60);
  const line = product('Work', [minutes, money(100)], cents, written(0).at, 60);
  const tape = createTape(cents, 'half-up');
  const [hoursAt, lineAt] = [tape.node(time), tape.node(line)];
  expect([tape.valueOf(hoursAt), tape.valueOf(lineAt)]).toEqual([0.75, 75]);
  const leaf = tape.leafAt(minutes.at as NonNullable<Figure['at']>) as Leaf;
  tape.set(leaf, 90);
  tape.runFrom(leaf);
  expect([tape.valueOf(hoursAt), tape.valueOf(lineAt), tape.leaves.length]).toEqual([1.5, 150, 2]);
});
