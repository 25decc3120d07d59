import * as z from 'zod';
import { digits } from './schema-values.js';

const day = () => z.string().regex(/^\d{4}-\d{2}-\d{2}$/);

/** The states in the order in which a job goes through them; an offer that ran out stands last. */
export const LIST_STATES = ['draft', 'quoted', 'authorised', 'in-work', 'closed', 'expired'] as const;

/** The schema of what `steelyard list --json` prints; the one in schemas/ is emitted from this. Built when it is asked for: an editor never does. */
export function listReport() {
  const estimate = z.strictObject({
    file: z.string(),
    title: z.string().nullable(),
    vehicle: z.string().nullable(),
    state: z.enum(LIST_STATES),
    since: day().nullable().describe('Since when it is in this state, where its records say.'),
    written: day().nullable(),
    age: z.int().min(0).nullable().describe('Days since it was written, or else since its first record; of a closed one, up to that day.'),
    pick: z.strictObject({
      of: z.enum(['option', 'stage']),
      name: z.string(),
      title: z.string(),
      by: z.enum(['said', 'cheapest']).describe('Done, authorised or quoted; or only the cheapest.'),
      ruledOut: z.array(z.string()).describe('Titles of the findings that speak against it.'),
      amount: digits(),
      amountOf: z.enum(['billed', 'total']).describe('What was billed, or what it comes to today.'),
    }).nullable(),
    currency: z.string().describe('ISO 4217; empty where the shop says none.'),
    waitsFor: z.strictObject({
      what: z.enum(['quote', 'answer', 'new-quote', 'authorisation', 'parts', 'start', 'work', 'closing']),
      until: day().optional().describe('The last day on which the prices hold, the day on which the last part is due, or the last day of the planned work.'),
      over: digits().optional().describe('By how much today’s total is above what was authorised.'),
    }).nullable(),
    whole: z.boolean().describe('False where lines could not be read or priced, so that the amount may be too low.'),
  });
  return z.strictObject({
    steelyard: z.literal(1),
    report: z.literal('list'),
    asOf: day().describe('The day for which states and ages are told.'),
    estimates: z.array(estimate).describe('By state, the oldest first.'),
    unread: z.array(z.strictObject({ file: z.string(), why: z.string() })).describe('Files that could not be read.'),
  }).describe('The estimates of a folder.');
}

export type ListReport = z.infer<ReturnType<typeof listReport>>;
