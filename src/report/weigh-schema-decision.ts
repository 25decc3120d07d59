import * as z from 'zod';
import { at, digits, figure, sampled, share } from './schema-values.js';

/** A written figure that turns the choice, in what `steelyard weigh --json` prints. */
export const flip = () => z.strictObject({
  line: z.string().describe('The title of the line that the figure is written on.'),
  label: z.string().describe('What the figure is.'),
  at: at(),
  unit: z.enum(['money', 'hours', 'minutes', 'percent', 'number', 'days']),
  value: digits().describe('As it is written.'),
  way: z.enum(['above', 'below']),
  holds: digits().describe('The last value at which the choice is still today’s.'),
  flips: digits().describe('The first value at which it is not.'),
  to: z.string().describe('The name of the option that is the cheapest beyond.'),
  share: digits().nullable().describe('How far off, as a share of the figure, to the fourth decimal; null where the figure is 0.'),
  measure: z.enum(['quoted', 'average']).describe('Quoted figures compare the cost in all; chances, which are in no quote, the cost on average.'),
  sentence: z.string(),
});

/** Something that could be looked at before deciding. */
export const inspection = () => z.strictObject({
  name: z.string(),
  title: z.string(),
  at: at(),
  price: figure(),
  worth: sampled('What it saves on average, before its price.'),
  net: sampled('The same less its price.'),
  perfectWorth: sampled('What knowing for certain would save.'),
  verdict: z.enum(['worth doing', 'not worth its price', 'cannot change the choice']),
  choose: z.string().describe('The option to choose without it, by its average cost.'),
  results: z.array(z.strictObject({
    shows: z.array(z.string()).describe('Titles of the chances that it shows; none where it shows nothing.'),
    chance: share('How likely that is.'),
    choose: z.string().nullable().describe('The option to choose then; null where the result can’t come.'),
    changes: z.boolean(),
  })),
  sentence: z.string(),
});

/** A recall or the like. */
export const coverage = () => z.strictObject({
  title: z.string(),
  at: at(),
  sort: z.enum(['recall', 'campaign', 'bulletin', 'extended-warranty']).nullable(),
  answer: z.enum(['covered', 'not covered', 'unknown']).describe('By what is written. No legal conclusion.'),
  conditions: z.array(z.strictObject({ condition: z.string(), holds: z.enum(['yes', 'no', 'unknown']) })),
  options: z.array(z.string()).describe('Names of the options that it would pay for.'),
  sentence: z.string(),
});
