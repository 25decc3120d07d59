/** The calculations: pure functions from a resolved estimate to plain data, every figure with its derivation. */
export type { Figure, FigureUnit, Points, Step } from './figure.js';
export type { Line, LineKind } from './line.js';
export type { Money } from './money.js';
export { moneyOf } from './money.js';
export type { Plan, Planned, PlannedJob, Work } from './plan.js';
export { planWork } from './plan.js';
export type { Totals, TaxLine } from './totals.js';
export { total } from './totals.js';
export { cheapestWays, before, MOST_WAYS, type RankedPlan, type WayMode, type WaysProblem } from './ways.js';
export type { CoreReturn, Returns } from './cores.js';
export type { Ready } from './ready.js';
export type { WhileOpen } from './open.js';
export type { Comparison, Penalty, Weighed } from './weigh.js';
export { weigh } from './weigh.js';
export { restsOn } from './rests-on.js';
export * as calendar from './calendar.js';
