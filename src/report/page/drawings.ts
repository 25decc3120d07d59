import type { Estimate } from '../../estimate/index.js';
import type { Comparison, Flip, Money } from '../../weigh/index.js';
import {
  chartAlone, chartWithNumbers, costBarOf, costBars, costNumbers, costRangeOf, flipDistanceOf, flipDistances, flipNumbers, outcomeCurveOf, outcomeCurves, outcomeNumbers,
  readyRangeOf, riskRange, timeline, timelineOf, waysBars, waysOf,
} from '../charts/index.js';
import { RULED_OUT } from '../ruled-out.js';
import { isCheapest, type PageView } from './cells.js';
import type { DecidedColumn, DecisionView } from './decided.js';
import type { Html } from './html.js';
import type { Column } from './last-good.js';

/** The word beside the option that costs least. */
const PICK = 'cheapest';
const LAST_GOOD = 'last good figures';

/** What is told of an option beside its title. */
function markOf(column: Column, comparison: Comparison): string | undefined {
  if (column.state === 'last-good') return LAST_GOOD;
  return isCheapest(column, comparison) ? PICK : column.weighed.option.ruledOutBy.length > 0 ? RULED_OUT : undefined;
}

/** What each option is made of, the access penalty by itself. */
export function costDrawing({ columns, comparison }: PageView): Html | undefined {
  const shown = columns.filter(({ state }) => state !== 'not-weighed');
  const first = shown[0];
  if (first === undefined) return undefined;
  const bars = shown.map((column) => costBarOf(column.weighed, markOf(column, comparison)));
  return chartWithNumbers('costs-drawn', (layout) => costBars(bars, first.money, { prefix: 'costs', layout }), costNumbers(bars, first.money));
}

/** The ways in of the options that have a choice; its numbers are the table that stands below it. */
export function waysDrawing(columns: readonly Column[]): Html | undefined {
  const first = columns[0];
  const options = columns.filter(({ weighed }) => weighed.planned.others.length > 0).map(({ weighed, state }) => waysOf(weighed, state === 'last-good' ? LAST_GOOD : undefined));
  if (first === undefined || options.length === 0) return undefined;
  return chartAlone('ways-drawn', (layout) => waysBars(options, first.money, { prefix: 'ways', layout }));
}

/** How the cases are spread: curves of the cost, and the ranges of cost and days, whose numbers are in the table below. */
export function sureDrawings({ decision, columns }: DecisionView): readonly Html[] {
  const { comparison } = decision;
  const { money } = comparison;
  const mark = ({ column }: DecidedColumn) => markOf(column, comparison);
  const curves = columns.flatMap((of) => outcomeCurveOf(of.decided, mark(of)) ?? []);
  const ready = columns.flatMap((of) => readyRangeOf(of.decided, mark(of)) ?? []);
  const cost = columns.flatMap((of) => costRangeOf(of.decided, money, mark(of)) ?? []);
  return [
    ...(curves.length === 0 ? [] : [chartWithNumbers('curves-drawn', (layout) => outcomeCurves(curves, money, { prefix: 'curves', layout }), outcomeNumbers(curves, money))]),
    ...(cost.length === 0 ? [] : [chartAlone('ranges-drawn', (layout) => riskRange(cost, 'cost', { prefix: 'ranges', layout }))]),
    ...(ready.length === 0 ? [] : [chartAlone('days-drawn', (layout) => riskRange(ready, 'ready', { prefix: 'days', layout }))]),
  ];
}

/** How far the nearest flip points are. */
export function flipsDrawing(flips: readonly Flip[], money: Money): Html | undefined {
  const near = flips.filter(({ share }) => share !== undefined).map((flip) => flipDistanceOf(flip, money));
  if (near.length === 0) return undefined;
  return chartWithNumbers('flips-drawn', (layout) => flipDistances(near, { prefix: 'flips', layout }), flipNumbers(near));
}

/** Who does what when; its numbers are the table that stands below it. */
export function timelineDrawing({ column, decided }: DecidedColumn, estimate: Estimate): Html | undefined {
  const plan = timelineOf(decided.weighed, estimate);
  if (plan.rows.length === 0) return undefined;
  return chartAlone(`drawn ${column.key}`, (layout) => timeline(plan, { prefix: `time-${column.key}`, layout }));
}
