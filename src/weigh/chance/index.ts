/** What chances and ranges do to a figure. Sampled or numerical, in doubles; nothing here feeds a quoted total. */
export { normalCdf, normalQuantile } from './normal.js';
export type { Curve, ThreePoints } from './curve.js';
export { certain } from './curve.js';
export { triangular } from './triangular.js';
export { betaPert, type BetaPert } from './beta-pert.js';
export { sumOf, chanceOfAtMost, momentsOf, MOST_VALUES, type Discrete, type Distribution, type TooManyValues } from './discrete.js';
export { statesOf, MOST_CHANCES, type States, type TooManyChances, type YesNo } from './states.js';
export { createDraws, MOST_CASES, type DrawPlan, type Draws } from './draws.js';
export { meanErrorBound, shareError } from './errors.js';
export { spreadOf, quantileOf, shareAtMost, cumulativeCurve, histogram, meanOf, type Column, type Spread } from './spread.js';
export { shareSmallest } from './smallest.js';
export { contributions, noise } from './contributions.js';
