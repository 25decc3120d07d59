import { readdirSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as charts from '../../../src/report/charts/index.js';
import { zero } from '../../../src/vocabulary/index.js';
import type { Weighed } from '../../../src/weigh/index.js';
import { sampleTexts, serviceOver } from '../../page/estimates.js';
import { randomEstimate } from '../../support/random-estimate.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { elementsOf, faultsOf, layouts, outside } from './drawing.js';

const names = readdirSync(path.resolve(import.meta.dirname, '../../../samples')).filter((name) => name.endsWith('.yard') && name !== 'shop.yard');

/** To the last cent: what is drawn of an option is its cost in all. */
function addsUp(weighed: Weighed): void {
  const bar = charts.costBarOf(weighed);
  const sum = Object.values(bar.parts).reduce((total, part) => total.plus(part), zero).minus(bar.comesBack);
  expect(sum.toFixed()).toBe(weighed.inAll.likely.toFixed());
  for (const part of [...Object.values(bar.parts), bar.comesBack]) expect(part.isNegative() && !part.isZero()).toBe(false);
}

function drawAll(texts: Map<string, string>, uri: string): void {
  const service = serviceOver(texts);
  const decision = service.decision(uri);
  const { comparison: { options, money, estimate } } = decision;
  options.forEach(addsUp);
  for (const layout of layouts) {
    const width = charts.WIDTHS[layout];
    const sound = (markup: string) => {
      expect(faultsOf(markup)).toEqual([]);
      expect(outside(markup, width)).toEqual([]);
    };
    if (options.length === 0) return;
    sound(charts.costBars(options.map((one) => charts.costBarOf(one)), money, { prefix: 'c', layout }).markup);
    sound(charts.waysBars(options.map((one) => charts.waysOf(one)), money, { prefix: 'w', layout }).markup);
    for (const weighed of options) {
      const plan = charts.timelineOf(weighed, estimate);
      expect(plan.rows).toHaveLength(weighed.ready.tasks.filter(({ start, end }) => end > start).length);
      sound(charts.timeline(plan, { prefix: `t ${weighed.option.name}`, layout }).markup);
    }
    const curves = decision.options.flatMap((one) => charts.outcomeCurveOf(one) ?? []);
    const flips = decision.flips.slice(0, 5).map((flip) => charts.flipDistanceOf(flip, money));
    if (flips.length > 0) sound(charts.flipDistances(flips, { prefix: 'f', layout }).markup);
    if (curves.length === 0) continue;
    sound(charts.outcomeCurves(curves, money, { prefix: 'o', layout }).markup);
    sound(charts.riskRange(decision.options.flatMap((one) => charts.costRangeOf(one, money) ?? []), 'cost', { prefix: 'r', layout }).markup);
    sound(charts.riskRange(decision.options.flatMap((one) => charts.readyRangeOf(one) ?? []), 'ready', { prefix: 'd', layout }).markup);
  }
}

describe.each(names)('charts of %s', (name) => {
  test('are sound, and bars add up to the cost in all', () => drawAll(sampleTexts(name), `/${name}`));

  test('dates of the timeline are those of the calendar', () => {
    const { comparison } = serviceOver(sampleTexts(name)).weighing(`/${name}`);
    for (const weighed of comparison.options) {
      const { rows, dates, hoursPerDay } = charts.timelineOf(weighed, comparison.estimate);
      for (const { start, from } of rows) if (from !== undefined) expect(new Date((dates?.[Math.floor(start / hoursPerDay + 1e-9)] ?? NaN) * 86_400_000).toISOString().slice(0, 10)).toBe(from);
    }
  });
});

test('an access penalty that is longer work is taken from labour, not added to it', () => {
  // Heads in place: the work takes longer than on a stand, as the `takes` lines of the sample say.
  const { comparison } = serviceOver(sampleTexts('kestrel-flat.yard')).weighing('/kestrel-flat.yard');
  const [inPlace] = comparison.options;
  const bar = charts.costBarOf(inPlace as Weighed);
  const { totals, planned } = inPlace as Weighed;
  const longer = totals.labour.likely.minus(bar.parts.labour);
  expect(longer.gt(0)).toBe(true);
  const goods = (['parts', 'sublets', 'fees', 'cores', 'tax'] as const).reduce((sum, one) => sum.plus(totals[one].likely).minus(planned.stand.totals[one].likely), zero);
  expect(bar.parts.penalty.toFixed()).toBe(longer.plus(totals.access.likely).plus(goods).toFixed());
  expect(elementsOf(charts.costBars([bar], comparison.money, { prefix: 'k', layout: 'wide' }).markup, 'rect', 'fill penalty').length).toBe(2);
});

test('charts of random estimates are sound, and bars add up to the cost in all', PATIENT, () => {
  fc.assert(fc.property(randomEstimate, (text) => drawAll(new Map([['/a.yard', text]]), '/a.yard')), runs(9, 8));
});
