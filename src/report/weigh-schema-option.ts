import * as z from 'zod';
import { at, digits, figure, sampled, share } from './schema-values.js';
import { line } from './weigh-schema-line.js';

const date = (says: string) => z.string().nullable().describe(`${says} YYYY-MM-DD; null where the estimate gives no day to start from.`);

const plan = () => z.strictObject({
  ways: z.array(z.string()).describe('Names of the ways in that are paid for; empty means in the car.'),
  total: digits(),
  hours: digits(),
}).describe('One way of doing the work of an option.');

const task = () => z.strictObject({
  id: z.string().describe('For --explain: its length.'),
  title: z.string(),
  kind: z.enum(['answer', 'remove', 'job', 'refit', 'part', 'tool', 'outside', 'core']),
  start: digits().describe('Hours of working time from the start of the work; nights and closed days do not exist.'),
  end: digits().describe('The same.'),
  from: date('The day of its start.'),
  to: date('The day of its end.'),
  technician: z.int().nullable().describe('From 1; null for waits, which keep nobody busy.'),
  slack: digits().describe('Hours by which it could start later without moving the end.'),
  critical: z.boolean().describe('Whether it decides the day.'),
  counts: z.boolean().describe('False for what may go on after the vehicle is ready.'),
  holdsAll: z.boolean().describe('True for a part or outside work that no work uses, so that all further work waits for it.'),
  at: at(),
});

const calendar = () => z.strictObject({
  hoursPerDay: digits(),
  technicians: z.int(),
  days: figure().describe('Working days from the start to the end, the first and the last counted.'),
  bay: figure().describe('Working days on which the bay is blocked.'),
  waiting: figure().describe('Of the time in the bay, working days in which nobody works on it.'),
  ready: date('The day on which it is ready.'),
  latest: date('The same if everything takes its high length.'),
  byChance: z.array(z.strictObject({
    chance: digits().describe('0.5, 0.8, 0.9.'),
    days: z.int(),
    date: date('The day by which it is ready with that chance.'),
  })).describe('From the three-point lengths along the critical path, by the normal approximation; chances of the estimate are not in it.'),
  proven: z.boolean().describe('Whether no plan is ready earlier.'),
  gap: digits().describe('Otherwise by how many hours one could be, at most.'),
  tasks: z.array(task()),
}).describe('The plan of the bay: who does what when.');

const spread = (says: string) => z.strictObject({
  mean: sampled('The mean.'), p10: sampled('10 % of cases are not above.'), p50: sampled('Half of the cases are not above.'), p90: sampled('90 % of cases are not above.'),
}).describe(says);

const risk = () => z.strictObject({
  cases: z.int().describe('How many were drawn; the seed is fixed, so the same file gives the same figures.'),
  total: spread('What the shop is paid for the work, with what turns up; without comebacks.'),
  inAll: spread('Cost in all, comebacks included.'),
  days: spread('Working days until it is ready.'),
  ready: z.strictObject({ p10: z.string(), p50: z.string(), p90: z.string() }).nullable().describe('YYYY-MM-DD; null where the estimate gives no day to start from.'),
  cheapest: share('Share of cases in which it is the cheapest in all.').nullable().describe('Null where it is not complete, is ruled out, or is the only one that is left.'),
  trouble: share('Share of cases in which at least one of its chances happens.'),
  contributions: z.array(z.strictObject({
    title: z.string(),
    kind: z.enum(['figure', 'chance']),
    share: share('Share of the spread of the cost in all that goes with it.'),
    at: at(),
  })).describe('At most three, greatest first.'),
}).describe('What may become of it: sampled, never quoted. Null where nothing varies.');

const margin = () => z.strictObject({
  by: z.array(z.strictObject({
    sort: z.enum(['labour', 'parts', 'outside']),
    sold: figure(),
    cost: figure(),
    margin: figure(),
    unknown: z.array(z.strictObject({ id: z.string(), title: z.string() })).describe('Lines whose cost nobody wrote down; they are in none of these figures.'),
  })),
  total: figure(),
  perHour: digits().nullable().describe('Null where there are no hours, or what some of them cost the shop is not written.'),
  perBayDay: digits().nullable().describe('Null likewise, and where there is no day in the bay.'),
}).describe('What stays with the shop. For the shop only: never for a customer.');

/** An option in what `steelyard weigh --json` prints: quoted, planned, and what may become of it. */
export const option = () => z.strictObject({
  name: z.string(),
  title: z.string(),
  written: z.boolean().describe('False for selling the vehicle as it stands, which no line writes.'),
  warranty: z.string().nullable().describe('How long the shop answers for the work, as it is written, such as 12 mo.'),
  complete: z.boolean().describe('False where a line it rests on could not be read or priced.'),
  ruledOut: z.array(z.string()).describe('Titles of the findings that speak against it. With any, it is weighed like the others and is no choice.'),
  rank: z.int().nullable().describe('1 is the cheapest in all; null where it is not complete or is ruled out.'),
  figures: z.record(z.string(), figure()).describe('By name, as for --explain OPTION.NAME.'),
  calendar: calendar(),
  average: sampled('Cost in all on average over every state of its chances, amounts at their three-point means.'),
  risk: risk().nullable(),
  monthly: z.strictObject({
    months: digits(),
    now: figure().describe('What is put into it now.'),
    resale: figure(),
    perMonth: figure(),
  }).nullable().describe('What each month of the service that is expected costs; null where the option does not say how long that is.'),
  downtime: figure().nullable().describe('What the days without the vehicle cost the customer. Not part of the quote.'),
  ways: z.strictObject({ pinned: z.boolean(), chosen: plan(), others: z.array(plan()), unpinned: plan().nullable().describe('Where the ways are pinned: the best without the pin.') }),
  open: z.array(z.strictObject({ job: z.string(), title: z.string(), now: figure(), alone: figure(), saved: figure() })).describe('Jobs to consider while it is open.'),
  cores: z.array(z.strictObject({ title: z.string(), charge: figure(), refund: figure(), taxBack: figure(), taxKept: figure().describe('Of the tax on the charge, what does not come back.'), deadline: z.string().nullable(), late: z.boolean() })),
  lines: z.array(line()),
  afterStages: z.strictObject({
    authorised: figure(),
    left: figure().describe('The total less that, not below nothing.'),
  }).optional().describe('Where a stage is authorised, and the option is not yet: what of the total is authorised already. The total is the same with it.'),
  shopOnly: margin(),
});
