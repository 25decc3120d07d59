/** What chances and ranges do to a figure. Sampled or numerical, in doubles; nothing here feeds a quoted total. */
export { normalCdf, normalQuantile } from './normal.js';
export type { Curve, ThreePoints } from './curve.js';
export { certain } from './curve.js';
export { triangular } from './triangular.js';
export { betaPert } from './beta-pert.js';
export { sumOf, chanceOfAtMost, momentsOf, type Discrete, type Distribution } from './discrete.js';
export { statesOf, MOST_CHANCES, type YesNo } from './states.js';
export { createDraws, type Draws } from './draws.js';
export { meanErrorBound, shareError } from './errors.js';
export { spreadOf, quantileOf, shareAtMost, cumulativeCurve, histogram, meanOf } from './spread.js';
export { shareSmallest } from './smallest.js';
export { contributions, noise } from './contributions.js';
