/** What chances and ranges do to a figure. Sampled or numerical, in doubles; nothing here feeds a quoted total. */
export { normalCdf, normalQuantile } from './normal.js';
export type { Curve, ThreePoints } from './curve.js';
export { certain } from './curve.js';
export { betaPert } from './beta-pert.js';
export { canHappen, happening, MOST_CHANCES, needsOf, statesOf, type States, type YesNo } from './states.js';
export { createDraws, type Draws } from './draws.js';
export { spreadOf, quantileOf, meanOf } from './spread.js';
export { shareSmallest } from './smallest.js';
export { contributions, noise } from './contributions.js';
