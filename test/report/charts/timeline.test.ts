import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { timeline, WIDTHS, type Timeline } from '../../../src/report/charts/index.js';
import { dayScale } from '../../../src/report/charts/day-scale.js';
import { calendar } from '../../../src/weigh/index.js';
import { runs } from '../../support/random-runs.js';
import { elementsOf, faultsOf, layouts, number, outside, plan, textsOf } from './drawing.js';

describe('the day scale', () => {
  const dates = plan.dates as readonly number[];

  test('leaves a gap for the weekend, and only there', () => {
    expect(dates.map(calendar.isoOf)).toEqual(['2026-12-02', '2026-12-03', '2026-12-04', '2026-12-07', '2026-12-08']);
    // Five working days, and two closed ones at 0.35 of a day each: 5.7 days on 570 units.
    const scale = dayScale(dates, 8, 40, 0, 570);
    expect(scale.gaps.map(({ from, to }) => [from, to].map(Math.round))).toEqual([[300, 370]]);
    expect(scale.days.map(({ label }) => label)).toEqual(['12-02', '12-03', '12-04', '12-07', '12-08']);
    expect(scale.endsAt(24)).toBeCloseTo(300, 9);
    expect(scale.startsAt(24)).toBeCloseTo(370, 9);
    expect(scale.startsAt(0)).toBe(0);
    expect(scale.endsAt(40)).toBeCloseTo(570, 9);
  });

  test('numbers days where no date is known, and leaves gaps out where they would be too thin', () => {
    expect(dayScale(undefined, 8, 24, 0, 300).days.map(({ label }) => label)).toEqual(['day 1', 'day 2', 'day 3']);
    const long = Array.from({ length: 260 }, (_, i) => 20789 + i + 2 * Math.floor(i / 5));
    expect(dayScale(long, 8, 260 * 8, 0, 360).gaps).toEqual([]);
  });

  test('labels never come closer than they are wide', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 300 }), fc.constantFrom(332, 358), (count, width) => {
      const days = Array.from({ length: count }, (_, i) => 20789 + i + 2 * Math.floor(i / 5));
      const labelled = dayScale(days, 8, count * 8, 0, width).days.filter(({ label }) => label !== undefined);
      labelled.slice(1).forEach(({ at }, i) => expect(at - labelled[i]!.at).toBeGreaterThanOrEqual(40));
      expect(labelled.length).toBeGreaterThan(0);
    }), runs(7, 100));
  });
});

describe('the timeline', () => {
  test.each(layouts)('has a row a task, waits hatched, the critical path as a line and a word, %s', (layout) => {
    const markup = timeline(plan, { prefix: 't', layout }).markup;
    expect(elementsOf(markup, 'rect', 'over wait')).toHaveLength(2 + 1); // two waits, and the legend
    expect(elementsOf(markup, 'polyline', 'path')).toHaveLength(4);
    expect(elementsOf(markup, 'rect', 'path')).toHaveLength(5 + 1);
    expect(textsOf(markup).filter((text) => text.endsWith('critical'))).toHaveLength(5);
    expect(textsOf(markup)).toContain('ready Tue 2026-12-08');
    // Work over the weekend is drawn in two pieces; a wait goes through.
    expect(elementsOf(markup, 'rect', 'fill work')).toHaveLength(4 + 1 + 1);
    expect(elementsOf(markup, 'line', 'thread')).toHaveLength(1);
  });

  test('a title that does not fit is shortened, its whole kept', () => {
    const markup = timeline(plan, { prefix: 't', layout: 'wide' }).markup;
    expect(markup).toContain('<title>Both heads: take off, clean faces, refit: the rest</title>');
    expect(textsOf(markup).some((text) => /^Both heads.*….*the rest$/.test(text))).toBe(true);
  });

  const anyPlan = fc.tuple(
    fc.array(fc.tuple(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: 1, max: 900 }), fc.boolean(), fc.boolean(), fc.string()), { minLength: 3, maxLength: 25 }),
    fc.constantFrom(6, 7.5, 8, 10), fc.boolean(), fc.integer({ min: 1, max: 100 }),
  ).map(([list, hoursPerDay, dated, scale]): Timeline => {
    const rows = list.map(([start, length, wait, critical, title]) => ({ title, kind: wait ? 'wait' as const : 'work' as const, start: (start * scale) / 1000, end: ((start + length) * scale) / 1000, critical, from: undefined, to: undefined })).sort((a, b) => a.start - b.start);
    const finish = Math.max(...rows.map(({ end }) => end));
    const dates = Array.from({ length: Math.ceil(finish / hoursPerDay) + 1 }, (_, i) => 20789 + i + 2 * Math.floor(i / 5));
    return { title: 'Any', rows, dates: dated ? dates : undefined, hoursPerDay, finish, ready: undefined };
  });

  test('of random plans, 3 to 25 tasks, stays inside, and a bar begins no earlier than the one before', () => {
    fc.assert(fc.property(anyPlan, fc.constantFrom(...layouts), (any, layout) => {
      const markup = timeline(any, { prefix: 't', layout }).markup;
      expect(faultsOf(markup)).toEqual([]);
      expect(outside(markup, WIDTHS[layout])).toEqual([]);
      const rows = markup.split(/<g class="(?:work|wait)(?: critical)?">/).slice(1);
      expect(rows).toHaveLength(any.rows.length);
      const starts = rows.map((row) => number(elementsOf(row, 'rect', 'fill')[0]!, 'x'));
      starts.slice(1).forEach((x, i) => expect(x).toBeGreaterThanOrEqual((starts[i] as number) - 0.011));
    }), runs(8, 80));
  });
});
