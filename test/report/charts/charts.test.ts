import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as charts from '../../../src/report/charts/index.js';
import type { Frame, Layout, Numbers } from '../../../src/report/charts/index.js';
import { isWellFormed } from '../../page/estimates.js';
import { runs } from '../../support/random-runs.js';
import { bars, curves, d, elementsOf, faultsOf, flips, hostile, layouts, money, number, outside, plan, ranges, textsOf, unescaped, ways } from './drawing.js';

const { costBars, costNumbers, costParts, flipDistances, flipNumbers, outcomeCurves, outcomeNumbers, riskRange, tableOf, timeline, waysBars, chartWithNumbers, WIDTHS } = charts;

/** Each kind of chart from texts that stand wherever a text may stand. */
const withTexts = (text: string): Readonly<Record<string, readonly [(frame: Frame) => { readonly markup: string }, Numbers | undefined]>> => {
  const titled = <T extends { readonly title: string }>(list: readonly T[]) => list.map((one) => ({ ...one, title: text }));
  const all = { bars: titled(bars), ways: titled(ways).map((one) => ({ ...one, ways: titled(one.ways) })), plan: { ...plan, title: text, rows: titled(plan.rows) }, curves: titled(curves), flips: flips.map((one) => ({ ...one, line: text, to: text })), ranges: titled(ranges) };
  return kinds(all);
};
const kinds = (of: { readonly bars: typeof bars; readonly ways: typeof ways; readonly plan: typeof plan; readonly curves: typeof curves; readonly flips: typeof flips; readonly ranges: typeof ranges }): Readonly<Record<string, readonly [(frame: Frame) => { readonly markup: string }, Numbers | undefined]>> => ({
  costs: [(frame) => costBars(of.bars, money, frame), costNumbers(of.bars, money)],
  ways: [(frame) => waysBars(of.ways, money, frame), undefined], // the table below it: page/ways-in.ts
  timeline: [(frame) => timeline(of.plan, frame), undefined], // its table is the calendar beside it, see page/bay-calendar.ts
  outcomes: [(frame) => outcomeCurves(of.curves, money, frame), outcomeNumbers(of.curves, money)],
  flips: [(frame) => flipDistances(of.flips, frame), flipNumbers(of.flips)],
  ranges: [(frame) => riskRange(of.ranges, 'cost', frame), undefined], // the table below it: page/how-sure.ts
});

const usual = kinds({ bars, ways, plan, curves, flips, ranges });
const names = Object.keys(usual);
const drawn = (name: string, layout: Layout, prefix = name) => (usual[name] as NonNullable<(typeof usual)[string]>)[0]({ prefix, layout }).markup;
const each = names.flatMap((name) => layouts.map((layout) => [name, layout] as const));

describe.each(each)('the chart of %s, %s', (name, layout) => {
  const markup = drawn(name, layout);

  test('is as it was looked at', async () => {
    // With a name space, so that the file can be opened by itself; in a page it needs none.
    const standing = markup.replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" ');
    await expect(`${standing}\n`).toMatchFileSnapshot(path.join(import.meta.dirname, 'golden', `${name}-${layout}.svg`));
  });

  test('is one sound image, and the same bytes again', () => {
    expect(faultsOf(markup)).toEqual([]);
    expect(outside(markup, WIDTHS[layout])).toEqual([]);
    expect(drawn(name, layout)).toBe(markup);
    expect(elementsOf(markup, 'svg')).toHaveLength(1);
  });

  test('shares no id with another place or layout', () => {
    const ids = (of: string) => [...of.matchAll(/\bid="([^"]*)"/g)].map(([, id]) => id);
    const other = layout === 'narrow' ? 'wide' : 'narrow';
    const all = [...ids(markup), ...ids(drawn(name, other)), ...ids(drawn(name, layout, 'a b')), ...ids(drawn(name, layout, 'a_20_b')), ...ids(drawn(name, layout, 'ab'))];
    expect(new Set(all).size).toBe(all.length);
  });

  test.each(hostile)('keeps %j a text', (text) => {
    const [draw, numbers] = withTexts(text)[name] as NonNullable<(typeof usual)[string]>;
    const whole = draw({ prefix: text, layout }).markup + (numbers === undefined ? '' : tableOf(numbers).markup);
    expect(faultsOf(whole)).toEqual([]);
    expect(whole).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]|<(script|style|img|b)\b/);
  });
});

test('numbers of every chart are a table with a caption, and texts for each column', () => {
  for (const [name, [, numbers]] of Object.entries(usual)) {
    if (numbers === undefined) continue;
    const markup = tableOf(numbers).markup;
    expect(isWellFormed(markup), name).toBe(true);
    expect(markup).toContain('<caption>');
    expect(numbers.head, name).not.toContain('');
    for (const row of numbers.rows) expect(row, name).toHaveLength(numbers.head.length);
    for (const text of numbers.rows.flat()) expect(unescaped(markup)).toContain(text);
  }
});

test('both layouts and the numbers go together into a page', () => {
  const markup = chartWithNumbers('costs', (layout) => costBars(bars, money, { prefix: 'costs', layout }), costNumbers(bars, money)).markup;
  expect(faultsOf(markup)).toEqual([]);
  expect(elementsOf(markup, 'svg').map(({ attributes }) => attributes.get('class'))).toEqual(['chart costs chart-narrow', 'chart costs chart-wide']);
  expect(elementsOf(markup, 'details')).toHaveLength(1);
});

const amount = fc.integer({ min: 0, max: 9_999_999 }).map((cents) => d(cents).div(100));
const anyBar = fc.tuple(fc.tuple(amount, amount, amount, amount, amount, amount, amount, amount, amount), fc.integer({ min: 0, max: 100 }), amount, amount, fc.string()).map(([values, zeros, back, spread, title]) => {
  const parts = Object.fromEntries(Object.keys(costParts).map((part, i) => [part, (zeros >> (i % 7)) & 1 ? d(0) : values[i]])) as (typeof bars)[number]['parts'];
  const sum = Object.values(parts).reduce((total, one) => total.plus(one), d(0));
  const likely = sum.minus(back);
  return { title, mark: undefined, parts, comesBack: back, inAll: { low: likely.minus(spread), likely, high: likely.plus(spread) } };
});

test('the parts of random costs are as wide as they are dear, touch, and end where the total is', () => {
  fc.assert(fc.property(fc.array(anyBar, { minLength: 1, maxLength: 6 }), fc.constantFrom(...layouts), (list, layout) => {
    const markup = costBars(list, money, { prefix: 'p', layout }).markup;
    expect(faultsOf(markup)).toEqual([]);
    expect(outside(markup, WIDTHS[layout])).toEqual([]);
    const options = markup.split('<g class="option">').slice(1);
    expect(options).toHaveLength(list.length);
    const measured = options.map((one, i) => {
      const rects = elementsOf(one, 'rect', 'fill');
      const { parts } = list[i] as (typeof list)[number];
      const amounts = Object.values(parts).filter((part) => part.gt(0)).map((part) => part.toNumber());
      expect(rects).toHaveLength(amounts.length);
      rects.slice(1).forEach((rect, k) => expect(number(rects[k]!, 'x') + number(rects[k]!, 'width')).toBeCloseTo(number(rect, 'x'), 6));
      return { widths: rects.map((rect) => number(rect, 'width')), amounts };
    });
    const sum = (values: readonly number[]) => values.reduce((total, one) => total + one, 0);
    const widest = measured.reduce((best, one) => (sum(one.amounts) > sum(best.amounts) ? one : best));
    if (sum(widest.amounts) === 0) return;
    const perUnit = sum(widest.widths) / sum(widest.amounts);
    for (const { widths, amounts } of measured) {
      expect(Math.abs(sum(widths) - sum(amounts) * perUnit)).toBeLessThan(0.03);
      widths.forEach((width, k) => expect(Math.abs(width - (amounts[k] as number) * perUnit)).toBeLessThan(0.03));
    }
  }), runs(1, 60));
});

test('every part of a cost has a pattern or stands alone without: no two look alike but for colour', () => {
  const looks = Object.values(costParts).map(({ fill }) => fill.pattern ?? fill.look);
  expect(new Set(looks).size).toBe(looks.length);
  expect(Object.values(costParts).filter(({ fill }) => fill.pattern === undefined).map(({ name }) => name)).toEqual(['Labour', 'Tax, net']);
  for (const part of ['Access penalty', 'Labour', 'Worth given up', 'comes back', 'low to high']) expect(textsOf(drawn('costs', 'wide'))).toContain(part);
});

test('the pick is marked by a word, and totals are written as in the figures', () => {
  const texts = textsOf(drawn('costs', 'narrow'));
  expect(texts).toContain('Fit a used enginecheapest');
  for (const text of ['6,714.71', '6,368.95', '7,078.16']) expect(texts).toContain(text);
});

test('the ways in have two bars each, as long as their money and hours', () => {
  for (const layout of layouts) {
    const rects = elementsOf(drawn('ways', layout), 'rect', 'fill');
    const of = (look: string) => rects.filter(({ attributes }) => (attributes.get('class') ?? '').includes(look)).map((rect) => number(rect, 'width'));
    const [first = 0, second = 0, third = 0] = of('labour');
    expect(first / third).toBeCloseTo(3746.35 / 4102, 3);
    expect(second / third).toBeCloseTo(3889.37 / 4102, 3);
    expect((of('hours')[0] ?? 0) / (of('hours')[2] ?? 1)).toBeCloseTo(20.2 / 24.75, 3);
    expect(textsOf(drawn('ways', layout)).filter((text) => /chosen|runner-up/.test(text))).toHaveLength(2);
  }
});

test('a cell of money is written by the digits of its currency', () => {
  expect(costNumbers(bars, { ...money, currency: { code: '', digits: 0 } }).rows.at(-1)?.[1]).toBe('7,771');
});

describe('distances to flips', () => {
  test('nearest on top, from the middle to the side of their sign, as long as they are far', () => {
    const markup = drawn('flips', 'wide');
    const lines = elementsOf(markup, 'line', 'distance');
    const length = lines.map((one) => number(one, 'x2') - number(one, 'x1'));
    expect(textsOf(markup).filter((text) => /^[+−]|^from/.test(text))).toEqual(['−9 %', '+22 %', '+340 %', 'from 0']);
    expect(Math.sign(length[0] ?? 0)).toBe(-1);
    // The scale ends at 100 %: what is farther reaches the edge and ends in an arrow.
    expect((length[1] ?? 0) / (length[2] ?? 1)).toBeCloseTo(0.2189, 3);
    expect(length[3]).toBe(length[2]);
    expect(elementsOf(markup, 'circle', 'tip')).toHaveLength(2);
    expect(elementsOf(markup, 'polyline', 'tip')).toHaveLength(2);
  });
});

test('ranges: the median is on its line, and lines are in proportion', () => {
  fc.assert(fc.property(fc.array(fc.tuple(fc.double({ min: -1e6, max: 1e9, noNaN: true }), fc.double({ min: 0, max: 1e6, noNaN: true }), fc.double({ min: 0, max: 1e6, noNaN: true }), fc.string()), { maxLength: 6 }), fc.constantFrom(...layouts), (list, layout) => {
    const some = list.map(([low, a, b, title]) => ({ title, mark: undefined, at: [low, low + a, low + a + b] as const, texts: ['1', '2', '3'] as const }));
    const markup = riskRange(some, 'ready', { prefix: 'r', layout }).markup;
    expect(faultsOf(markup)).toEqual([]);
    expect(outside(markup, WIDTHS[layout])).toEqual([]);
    const [spreads, medians] = [elementsOf(markup, 'line', 'spread'), elementsOf(markup, 'circle', 'median')];
    expect(spreads).toHaveLength(some.length);
    spreads.forEach((one, i) => {
      expect(number(medians[i]!, 'cx')).toBeGreaterThanOrEqual(number(one, 'x1'));
      expect(number(medians[i]!, 'cx')).toBeLessThanOrEqual(number(one, 'x2'));
    });
  }), runs(2, 100));
});

test('with nothing to show there is still a sound image', () => {
  const empty = kinds({ bars: [], ways: [], plan: { ...plan, rows: [], finish: 0, ready: undefined }, curves: [], flips: [], ranges: [] });
  for (const [name, [draw]] of Object.entries(empty)) for (const layout of layouts) expect(faultsOf(draw({ prefix: name, layout }).markup), name).toEqual([]);
});
