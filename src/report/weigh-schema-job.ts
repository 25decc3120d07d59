import * as z from 'zod';
import { at, figure } from './schema-values.js';
import { line } from './weigh-schema-line.js';

/** A stage, in what `steelyard weigh --json` prints. */
export const stage = () => z.strictObject({
  name: z.string(),
  title: z.string(),
  at: at(),
  complete: z.boolean().describe('False where a line it rests on could not be read or priced.'),
  total: figure().describe('The stage alone, left as it is.'),
  hours: figure(),
  putBack: figure().describe('What putting everything back adds, with fees and taxes.'),
  backHours: figure(),
  stop: figure().describe('What is owed where the customer stops there and it is put back.'),
  authorised: figure().nullable().describe('What is authorised for it; null where nothing is.'),
  ways: z.array(z.string()).describe('Names of the ways in that it opens.'),
  destroys: z.array(z.string()).describe('Titles of the parts that it destroys.'),
  lines: z.array(line()),
  backLines: z.array(line()).describe('What putting back adds, fees and taxes left out.'),
}).describe('Work that comes before the decision. Its work is in the total of every option, once.');

/** What a customer authorised, beside what it comes to today. */
export const authorised = () => z.strictObject({
  for: z.string().describe('The name of the option or stage.'),
  title: z.string(),
  at: at(),
  on: z.string().nullable().describe('YYYY-MM-DD.'),
  by: z.string().nullable(),
  how: z.enum(['in-person', 'phone', 'message', 'email', 'signed']).nullable(),
  version: z.string().nullable().describe('The version that the customer agreed to, in the shop’s own word.'),
  earlier: z.int().describe('How many authorisations for the same it took the place of.'),
  complete: z.boolean().describe('False where a line of today’s total could not be read or priced.'),
  amount: figure().describe('What was authorised.'),
  against: z.enum(['today', 'billed']).nullable().describe('What total is: today’s, or what was billed once the job is closed; null where it is closed and there is nothing to hold it against.'),
  total: figure().describe('What it is held against, tax and core charges included.'),
  over: figure().describe('By how much the total is above what was authorised.'),
  room: figure().describe('How far it may be above without asking, by the shop’s own rule.'),
  roomUsed: figure(),
  roomLeft: figure(),
  aboveRoom: figure().describe('What is above the room too.'),
  since: z.string().nullable().describe('The option that was authorised later, so that this one is not done.'),
  mustAsk: z.boolean().nullable().describe('Whether the customer must be asked by the shop’s own rule; null where that can’t be told, another option was authorised later or the job is closed. No legal conclusion.'),
  sentence: z.string(),
});

/** How far the job has come. */
export const state = () => z.strictObject({
  state: z.enum(['draft', 'quoted', 'authorised', 'in-work', 'closed', 'expired']),
  since: z.string().nullable().describe('YYYY-MM-DD, where the records say.'),
  option: z.string().nullable().describe('The option or stage that was authorised, done, or else quoted last.'),
  validUntil: z.string().nullable().describe('The last day on which the prices hold, while the customer has not answered.'),
  asOf: z.string().describe('The day for which this holds.'),
}).describe('How far the job has come, by its records.');
