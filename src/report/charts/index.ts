/** Charts as markup: pure functions from plain data, each with its numbers as a table. Looks are in charts.css. */
export { WIDTHS, type Frame, type Layout } from './frame.js';
export { chartAlone, chartWithNumbers, tableOf, type Numbers } from './table.js';
export { costBarOf, costParts, type CostBar, type CostPart } from './cost-parts.js';
export { costBars, costNumbers } from './cost-bars.js';
export { waysBars, waysOf, type WayBar, type WaysOf } from './ways-bars.js';
export { timelineOf, type Timeline, type TimelineRow } from './timeline-rows.js';
export { timeline } from './timeline.js';
export { outcomeCurveOf, outcomeCurves, outcomeNumbers, type OutcomeCurve } from './outcome-curves.js';
export { flipDistanceOf, flipDistances, flipNumbers, type FlipDistance } from './flip-distances.js';
export { costRangeOf, readyRangeOf, riskRange, type RangeOf, type RiskRange } from './risk-range.js';
