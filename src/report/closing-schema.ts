import * as z from 'zod';
import { at, digits } from './schema-values.js';

/**
 * The schema of what `steelyard closing --json` prints; the one in schemas/ is emitted from this. Built when it is asked
 * for: an editor never does.
 */
export function closingReport() {
  const line = z.strictObject({
    title: z.string(),
    name: z.string().optional(),
    with: z.array(z.string()).describe('The ways in that its hours take.'),
    planned: z.boolean().describe('False where the option as it was planned has no such line.'),
    estimated: digits().nullable().describe('Null where it was not planned, or where the estimate does not know it, such as the cost of a part with a price.'),
    actual: digits().nullable().describe('Null where nobody recorded it; never 0 for that.'),
    over: digits().nullable().describe('What it was more than estimated; below 0 where it was less.'),
    percent: digits().nullable().describe('The same in percent of the estimate, to the first decimal.'),
    at: at(),
  });

  const part = z.strictObject({
    lines: z.array(line),
    estimated: digits().describe('Of the lines that were estimated and recorded.'),
    actual: digits().describe('Of the same lines.'),
    over: digits().describe('The difference of these two.'),
    percent: digits().nullable(),
    beyond: digits().describe('Recorded without an estimate.'),
    open: digits().describe('Estimated, and not recorded.'),
  });

  return z.strictObject({
    steelyard: z.literal(1),
    report: z.literal('closing'),
    title: z.string().nullable(),
    vehicle: z.string().nullable(),
    currency: z.strictObject({ code: z.string().nullable(), digits: z.int() }),
    option: z.strictObject({ name: z.string(), title: z.string(), complete: z.boolean().describe('False where a line that it rests on could not be read or priced.') }),
    closed: z.string().nullable().describe('YYYY-MM-DD.'),
    hours: part.describe('Hours by line; opening and closing a way in count as one line.'),
    paid: part.describe('What the shop paid, beside the cost where the estimate knows it.'),
    cores: part.describe('Core money that came back, beside the refund that was expected.'),
    days: line.describe('Working days from the start to the closing, both counted.'),
    billed: line.describe('What was billed, beside the total of the estimate.'),
    authorised: z.strictObject({
      amount: digits().describe('What was authorised last for what was done.'),
      over: digits().describe('By how much what was billed is above it; 0 where it is not.'),
      room: digits().describe('How far it could be above without asking, by the shop’s own rule.'),
      aboveRoom: digits().describe('What is above the room too. No legal conclusion.'),
    }).nullable().describe('Null where nothing is authorised for what was done, or what was billed is not written.'),
    authorisedElse: z.string().nullable().describe('What was authorised last, an option or a stage, where that is not what was done.'),
    otherWays: z.strictObject({
      taken: z.array(z.string()).describe('Ways in that were clocked and not planned.'),
      left: z.array(z.string()).describe('Ways in that were planned and not clocked, where any was clocked.'),
    }),
    sentences: z.array(z.string()),
  }).describe('What a job that is over really took, beside its estimate.');
}

export type ClosingReport = z.infer<ReturnType<typeof closingReport>>;
