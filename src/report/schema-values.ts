import * as z from 'zod';

// Values that stand in several reports. Each is made anew for its place, and only when a schema is asked for: an editor never asks.

const number = () => z.string().regex(/^-?\d+(\.\d+)?$/);

export const digits = () => number().describe('Decimal digits; never a binary float.');

export const sampled = (says: string) => number().describe(`${says} Sampled and rounded; never part of a quote.`);

/** A share of cases, or a chance. */
export const share = (says: string) => digits().describe(`${says} From 0 to 1, to the third decimal.`);

export const place = () => z.strictObject({
  file: z.string(),
  line: z.int().describe('From 1.'),
  column: z.int().describe('From 1, in UTF-16 units.'),
});

/** Where something was written, if that is known. */
export const at = () => place().describe('Where it was written.').optional();

/** A figure at its three points. */
export const figure = () => z.strictObject({
  low: digits().describe('If every figure comes in low.'),
  likely: digits().describe('The quoted one.'),
  high: digits().describe('If every figure comes in high.'),
  unit: z.enum(['money', 'hours', 'minutes', 'percent', 'number', 'days']),
}).describe('A figure at its three points; money in the currency named at the top.');
