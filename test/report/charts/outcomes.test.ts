import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outcomeCurves } from '../../../src/report/charts/index.js';
import { shareUpTo, thinned } from '../../../src/report/charts/thin.js';
import { scaleOf, ticksOf } from '../../../src/report/charts/scale.js';
import { shortened, widthOf } from '../../../src/report/charts/fit.js';
import { runs } from '../../support/random-runs.js';
import { curves, elementsOf, faultsOf, layouts, money, outside, textsOf } from './drawing.js';

const anyCases = fc.array(fc.oneof(fc.integer({ min: -5, max: 5 }), fc.double({ min: -1e7, max: 1e7, noNaN: true })), { minLength: 1, maxLength: 1200 }).map((list) => Float64Array.from(list));

describe('a thinned distribution', () => {
  // The empirical distribution function: F(x) is the share of the cases that are at most x (textbook definition, from
  // memory). Counted here case by case, without sorting.
  test('has at most 60 points, each exactly on it, from nothing at the least case to all at the greatest', () => {
    fc.assert(fc.property(anyCases, (cases) => {
      const before = cases.slice();
      const points = thinned(cases, 60);
      expect(cases).toEqual(before);
      expect(points.length).toBeLessThanOrEqual(60);
      expect(points[0]).toEqual({ value: Math.min(...cases), share: 0 });
      expect(points.at(-1)).toEqual({ value: Math.max(...cases), share: 1 });
      for (const { value, share } of points.slice(1)) expect(share).toBe([...cases].filter((one) => one <= value).length / cases.length);
      points.slice(1).forEach((point, i) => {
        expect(point.share).toBeGreaterThan(points[i]!.share);
        expect(point.value).toBeGreaterThanOrEqual(points[i]!.value);
      });
    }), runs(3, 150));
  });

  test('of 1 to 1000 has a point every 17 cases or so', () => {
    const points = thinned(Float64Array.from({ length: 1000 }, (_, i) => i + 1), 60);
    expect(points).toHaveLength(60);
    for (const { value, share } of points.slice(1)) expect(share).toBe(value / 1000);
    expect(Math.max(...points.slice(1).map((point, i) => point.share - points[i]!.share))).toBeLessThan(0.019);
  });

  test('of none is none', () => {
    expect(thinned(new Float64Array(0), 60)).toEqual([]);
    expect(shareUpTo(new Float64Array(0), 1)).toBe(0);
  });
});

describe('outcome curves', () => {
  test('one curve an option, each with its own dashes, its label and its quoted value', () => {
    for (const layout of layouts) {
      const markup = outcomeCurves(curves, money, { prefix: 'c', layout }).markup;
      const drawn = elementsOf(markup, 'polyline', 'curve');
      expect(drawn).toHaveLength(3);
      expect(new Set(drawn.map(({ attributes }) => attributes.get('stroke-dasharray'))).size).toBe(3);
      expect(elementsOf(markup, 'line', 'quoted')).toHaveLength(4); // and one in the legend
      for (const text of ['Rebuild the rear head', 'Fit a used enginecheapest', 'Sell it as it stands', '10 %', '50 %', '90 %', 'what is quoted']) expect(textsOf(markup)).toContain(text);
      for (const { attributes } of drawn) expect((attributes.get('points') ?? '').split(' ').length).toBeLessThanOrEqual(60);
    }
  });

  test('random cases are drawn inside and rise', () => {
    fc.assert(fc.property(fc.array(fc.tuple(anyCases, fc.string(), fc.double({ min: -1e7, max: 1e7, noNaN: true })), { maxLength: 9 }), fc.constantFrom(...layouts), (list, layout) => {
      const markup = outcomeCurves(list.map(([cases, title, quoted]) => ({ title, mark: 'cheapest', cases, quoted })), money, { prefix: 'c', layout }).markup;
      expect(faultsOf(markup)).toEqual([]);
      expect(outside(markup, layout === 'narrow' ? 360 : 640)).toEqual([]);
      for (const { attributes } of elementsOf(markup, 'polyline', 'curve')) {
        const points = (attributes.get('points') ?? '').split(' ').map((pair) => pair.split(',').map(Number) as [number, number]);
        points.slice(1).forEach(([x, y], i) => {
          expect(x).toBeGreaterThanOrEqual(points[i]![0]);
          expect(y).toBeLessThanOrEqual(points[i]![1]);
        });
      }
    }), runs(4, 40));
  });
});

describe('scales and fitting', () => {
  test.each([
    [0, 10, 5, [0, 2, 4, 6, 8, 10]], [0, 9357, 6, [0, 2000, 4000, 6000, 8000]], [6000, 10800, 4, [6000, 8000, 10000]], [-30, 30, 6, [-30, -20, -10, 0, 10, 20, 30]], [5, 5, 4, []], [0, 1e9, 4, [0, 5e8, 1e9]],
  ])('round values from %d to %d, %d steps at most', (low, high, most, ticks) => {
    expect(ticksOf({ low, high }, most)).toEqual(ticks);
  });

  test('ticks are inside, few and evenly apart, whatever the span', () => {
    fc.assert(fc.property(fc.double({ min: -1e12, max: 1e12, noNaN: true }), fc.double({ min: 1e-3, max: 1e12, noNaN: true }), fc.integer({ min: 2, max: 9 }), (low, span, most) => {
      const high = low + span;
      const ticks = ticksOf({ low, high }, most);
      expect(ticks.length).toBeLessThanOrEqual(most + 1);
      const { at } = scaleOf(low, high, 0, 100);
      for (const tick of ticks) expect(Math.abs(at(tick) - 50)).toBeLessThanOrEqual(50.0001);
    }), runs(5, 300));
  });

  test('a cut text fits, begins as the whole, and inside cuts end as it too', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 80 }), fc.integer({ min: 20, max: 300 }), (text, width) => {
      for (const cut of ['end', 'inside'] as const) {
        const short = shortened(text, width, 12, cut);
        if (short === text) continue;
        expect(widthOf(short, 12)).toBeLessThanOrEqual(width + 1e-9);
        const [before = '', after = ''] = short.split('…');
        expect(text.startsWith(before)).toBe(true);
        if (!text.includes('…')) expect(text.endsWith(after)).toBe(true);
        expect(short).not.toMatch(/[\ud800-\udbff](?![\udc00-\udfff])/);
      }
    }), runs(6, 300));
  });

  test('what differs at its end stays different', () => {
    const [remove, refit] = ['remove', 'refit'].map((end) => shortened(`Engine and gearbox lowered on the subframe: ${end}`, 200, 12, 'inside'));
    expect(remove).toMatch(/^Engine and .*….*remove$/);
    expect(refit).toMatch(/^Engine and .*….*refit$/);
  });
});
