import { describe, expect, test } from 'vitest';
import type { MarkupBand } from '../../src/estimate/index.js';
import { currencyOf, type Currency } from '../../src/vocabulary/index.js';
import { Decimal, type Amount } from '../../src/vocabulary/index.js';
import { besideLeast, constant, difference, found, given, greatest, least, percentage, product, raised, remainder, sum, times, type Figure } from '../../src/weigh/figure.js';
import { moneyOf } from '../../src/weigh/index.js';
import { createTape, type Leaf } from '../../src/weigh/tape.js';

// The tape works in binary numbers what figures work in decimals: at the written values both say the same.

const cents = moneyOf(currencyOf('USD') as Currency, 'half-up');

function written(low: number, likely = low, high = likely): Amount {
  return { low: new Decimal(low), likely: new Decimal(likely), high: new Decimal(high), unit: undefined, at: {} } as Amount;
}

const money = (...points: readonly [number, number?, number?]) => given('Price', 'money', written(...points));
const leafOf = (tape: ReturnType<typeof createTape>, { at }: Figure) => tape.leafAt(at as NonNullable<Figure['at']>) as Leaf;

describe('a figure on the tape', () => {
  const [a, b, c] = [money(10, 12, 20), money(1, 2, 6), money(5)];
  const hours = given('Time', 'minutes', written(50));

  test.each<[string, Figure]>([
    ['written', a], ['a constant', constant('', 'hours', new Decimal(8))], ['found', found('', 'days', new Decimal(3), 'So.', [a])],
    ['a sum', sum('', 'money', [a, b, c])], ['a sum of nothing', sum('', 'money', [])], ['a difference', difference('', 'money', [b, a, c])],
    ['what is left', remainder('', 'money', [a, b])], ['nothing is left', remainder('', 'money', [b, a])],
    ['a product', times('', 'money', [a, b, c])], ['rounded', product('', [money(0.333), money(100.35)], cents, undefined)], ['of minutes', product('', [hours, money(100)], cents, undefined, 60)],
    ['a percentage', percentage('', a, given('', 'percent', written(7.25)), cents, undefined)], ['a cost with markup', raised('', money(0.35), given('', 'percent', written(50)))],
    ['the least', least('', [a, b, c])], ['the greatest', greatest('', [c, a, b])],
    ['beside the least', besideLeast('', [a, b, b], [hours, given('', 'hours', written(4)), given('', 'hours', written(3))])],
    ['on several steps', sum('', 'money', [times('', 'money', [a, b]), difference('', 'money', [c, b])])],
  ])('%s', (_, figure) => {
    const tape = createTape(cents, 'half-up');
    const node = tape.node(figure);
    expect(tape.valueOf(node)).toBeCloseTo(figure.likely.toNumber(), 10);
    tape.run();
    expect(tape.valueOf(node)).toBeCloseTo(figure.likely.toNumber(), 10);
    // At its low and high values, too, all set and then each in turn.
    for (const point of ['low', 'high', 'likely'] as const) {
      for (const leaf of tape.leaves) tape.set(leaf, leaf[point]);
      tape.run();
      expect(tape.valueOf(node)).toBeCloseTo(figure[point].toNumber(), 10);
    }
    for (const point of ['high', 'low'] as const) {
      for (const leaf of tape.leaves) {
        tape.set(leaf, leaf[point]);
        tape.runFrom(leaf);
      }
      if (figure.step.kind !== 'given') expect(tape.valueOf(node)).toBeCloseTo(figure[point].toNumber(), 10);
    }
  });

  test('what is written once is one leaf, however often a figure is made of it', () => {
    const amount = written(10, 12, 20);
    const [one, other] = [given('One', 'money', amount), given('Other', 'money', amount)];
    const tape = createTape(cents, 'half-up');
    const node = tape.node(sum('', 'money', [one, other]));
    expect(tape.leaves).toHaveLength(1);
    expect(tape.node(other)).toBe(tape.node(one));
    const leaf = leafOf(tape, one);
    expect([leaf.low, leaf.likely, leaf.high]).toEqual([10, 12, 20]);
    tape.set(leaf, 7);
    tape.runFrom(leaf);
    expect(tape.valueOf(node)).toBe(14);
    expect(tape.leafAt({} as NonNullable<Figure['at']>)).toBeUndefined();
  });

  test('what does not rest on a leaf keeps its value when only that leaf is worked anew', () => {
    const [one, other] = [money(1), money(2)];
    const tape = createTape(cents, 'half-up');
    const [left, right, both] = [sum('', 'money', [one]), sum('', 'money', [other]), sum('', 'money', [one, other])].map((figure) => tape.node(figure)) as [number, number, number];
    tape.set(leafOf(tape, one), 10);
    tape.set(leafOf(tape, other), 20);
    tape.runFrom(leafOf(tape, one));
    expect([left, right, both].map((node) => tape.valueOf(node))).toEqual([10, 2, 30]);
    // A figure that came later is worked anew with its leaf, too.
    const later = tape.node(times('', 'money', [one, money(3)]));
    tape.set(leafOf(tape, one), 11);
    tape.runFrom(leafOf(tape, one));
    expect(tape.valueOf(later)).toBe(33);
  });
});

describe('rounding', () => {
  const values = [0.005, 0.015, 0.0149, 0.0151, 1.005, 2.675, 0.125];

  test.each(['half-up', 'half-even', 'half-down'] as const)('%s, as decimals are rounded', (rounding) => {
    const own = moneyOf(currencyOf('USD') as Currency, rounding);
    for (const value of values) {
      const tape = createTape(own, rounding);
      const figure = product('', [money(value)], own, undefined);
      expect(tape.valueOf(tape.node(figure)), String(value)).toBeCloseTo(figure.likely.toNumber(), 10);
    }
  });

  test('money without coins', () => {
    const yen = moneyOf(currencyOf('JPY') as Currency, 'half-up');
    const tape = createTape(yen, 'half-up');
    expect(tape.valueOf(tape.node(product('', [money(12.5)], yen, undefined)))).toBe(13);
  });
});

describe('a cost and the table of the markup', () => {
  const cost = written(90);
  const bands = ([[50, 100], [40, 200], [30, undefined]] as const).map(([percent, upTo]) => ({ percent: written(percent), upTo: upTo === undefined ? undefined : written(upTo) }) as unknown as MarkupBand);
  const price = raised('', given('Cost', 'money', cost), given('Markup', 'percent', (bands[0] as MarkupBand).percent));
  const at = (table: readonly MarkupBand[] | undefined, figure: Figure, value: number) => {
    const tape = createTape(cents, 'half-up', new Map(table === undefined ? [] : [[cost.at, table]]));
    const node = tape.node(figure);
    tape.set(tape.leafAt(cost.at) as Leaf, value);
    tape.run();
    return tape.valueOf(node);
  };

  test('with the table the band is that which reaches the cost, its end with it', () => {
    expect([90, 100, 100.01, 200, 201, 1000].map((value) => Number(at(bands, price, value).toFixed(4)))).toEqual([135, 150, 140.014, 280, 261.3, 1300]);
  });

  test('in whatever order the bands are written, the nearest end counts', () => {
    expect([90, 150, 300].map((value) => at([...bands].reverse(), price, value))).toEqual([135, 210, 390]);
  });

  test('without one it keeps the band that it was quoted with', () => {
    expect([90, 150].map((value) => at(undefined, price, value))).toEqual([135, 225]);
  });

  test('a cost beyond every band is its own price, and may come into one', () => {
    const short = bands.slice(0, 2);
    const plain = sum('', 'money', [given('Cost', 'money', cost)]);
    expect([90, 150, 300].map((value) => at(short, plain, value))).toEqual([135, 210, 300]);
    expect(at([], plain, 150)).toBe(150);
  });

  test('an end of a band that moves takes the cost in, or lets it go', () => {
    const tape = createTape(cents, 'half-up', new Map([[cost.at, bands]]));
    const node = tape.node(price);
    const end = tape.leafAt(((bands[0] as MarkupBand).upTo as Amount).at) as Leaf;
    tape.set(end, 80);
    tape.runFrom(end);
    expect(tape.valueOf(node)).toBe(126);
  });
});
