import * as z from 'zod';

const digits = () => z.string().regex(/^-?\d+(\.\d+)?$/).describe('Decimal digits; never a binary float.');
const sampled = (says: string) => digits().describe(`${says} Sampled and rounded; never part of a quote.`);
const date = (says: string) => z.string().nullable().describe(`${says} YYYY-MM-DD; null where the estimate gives no day to start from.`);
const share = (says: string) => digits().describe(`${says} From 0 to 1, to the third decimal.`);

/** A figure at its three points; made anew, since a schema that stands in two places is then written out in both. */
const figureAt = () => z.strictObject({
  low: digits().describe('If every figure comes in low.'),
  likely: digits().describe('The quoted one.'),
  high: digits().describe('If every figure comes in high.'),
  unit: z.enum(['money', 'hours', 'minutes', 'percent', 'number', 'days']),
}).describe('A figure at its three points; money in the currency named at the top.');

/**
 * The schema of what `steelyard weigh --json` prints; the one in schemas/ is emitted from this. Built when it is asked
 * for: an editor never does.
 */
export function weighReport() {
  const figure = figureAt();
  const place = z.strictObject({
    file: z.string(),
    line: z.int().describe('From 1.'),
    column: z.int().describe('From 1, in UTF-16 units.'),
  }).describe('Where it was written.');

  const plan = z.strictObject({
    ways: z.array(z.string()).describe('Names of the ways in that are paid for; empty means in the car.'),
    total: digits(),
    hours: digits(),
  }).describe('One way of doing the work of an option.');

  const line = z.strictObject({
    id: z.string().describe('For --explain.'),
    kind: z.enum(['labour', 'part', 'sublet', 'fee', 'core']),
    share: z.enum(['work', 'access']),
    title: z.string(),
    name: z.string().optional(),
    amount: figure,
    hours: figure.optional(),
    quantity: figure.optional(),
    condition: z.enum(['new', 'aftermarket', 'rebuilt', 'used', 'customer-supplied']).optional(),
    with: z.array(z.string()).describe('The ways in that its hours take.'),
    at: place.optional(),
  });

  const task = z.strictObject({
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
    at: place.optional(),
  });

  const calendar = z.strictObject({
    hoursPerDay: digits(),
    technicians: z.int(),
    days: figure.describe('Working days from the start to the end, the first and the last counted.'),
    bay: figure.describe('Working days on which the bay is blocked.'),
    waiting: figure.describe('Of the time in the bay, working days in which nobody works on it.'),
    ready: date('The day on which it is ready.'),
    latest: date('The same if everything takes its high length.'),
    byChance: z.array(z.strictObject({
      chance: digits().describe('0.5, 0.8, 0.9.'),
      days: z.int(),
      date: date('The day by which it is ready with that chance.'),
    })).describe('From the three-point lengths along the critical path, by the normal approximation; chances of the estimate are not in it.'),
    proven: z.boolean().describe('Whether no plan is ready earlier.'),
    gap: digits().describe('Otherwise by how many hours one could be, at most.'),
    tasks: z.array(task),
  }).describe('The plan of the bay: who does what when.');

  const spread = (says: string) => z.strictObject({
    mean: sampled('The mean.'), p10: sampled('10 % of cases are not above.'), p50: sampled('Half of the cases are not above.'), p90: sampled('90 % of cases are not above.'),
  }).describe(says);

  const risk = z.strictObject({
    cases: z.int().describe('How many were drawn; the seed is fixed, so the same file gives the same figures.'),
    total: spread('What the shop is paid for the work, with what turns up; without comebacks.'),
    inAll: spread('Cost in all, comebacks included.'),
    days: spread('Working days until it is ready.'),
    ready: z.strictObject({ p10: z.string(), p50: z.string(), p90: z.string() }).nullable().describe('YYYY-MM-DD; null where the estimate gives no day to start from.'),
    cheapest: share('Share of cases in which it is the cheapest in all.').nullable().describe('Null where it is not complete.'),
    trouble: share('Share of cases in which at least one of its chances happens.'),
    contributions: z.array(z.strictObject({
      title: z.string(),
      kind: z.enum(['figure', 'chance']),
      share: share('Share of the spread of the cost in all that goes with it.'),
      at: place.optional(),
    })).describe('At most three, greatest first.'),
  }).describe('What may become of it: sampled, never quoted. Null where nothing varies.');

  const margin = z.strictObject({
    by: z.array(z.strictObject({
      sort: z.enum(['labour', 'parts', 'outside']),
      sold: figure,
      cost: figure,
      margin: figure,
      unknown: z.array(z.strictObject({ id: z.string(), title: z.string() })).describe('Lines whose cost nobody wrote down; they are in none of these figures.'),
    })),
    total: figure,
    perHour: digits().nullable(),
    perBayDay: digits().nullable(),
  }).describe('What stays with the shop. For the shop only: never for a customer.');

  const option = z.strictObject({
    name: z.string(),
    title: z.string(),
    written: z.boolean().describe('False for selling the vehicle as it stands, which no line writes.'),
    warranty: z.string().nullable().describe('How long the shop answers for the work, as it is written, such as 12 mo.'),
    complete: z.boolean().describe('False where a line it rests on could not be read or priced.'),
    rank: z.int().nullable().describe('1 is the cheapest in all; null where it is not complete.'),
    figures: z.record(z.string(), figure).describe('By name, as for --explain OPTION.NAME.'),
    calendar,
    average: sampled('Cost in all on average over every state of its chances, amounts at their three-point means.'),
    risk: risk.nullable(),
    monthly: z.strictObject({
      months: digits(),
      now: figure.describe('What is put into it now.'),
      resale: figure,
      perMonth: figure,
    }).nullable().describe('What each month of the service that is expected costs; null where the option does not say how long that is.'),
    downtime: figure.nullable().describe('What the days without the vehicle cost the customer. Not part of the quote.'),
    ways: z.strictObject({ pinned: z.boolean(), chosen: plan, others: z.array(plan), unpinned: plan.nullable().describe('Where the ways are pinned: the best without the pin.') }),
    open: z.array(z.strictObject({ job: z.string(), title: z.string(), now: figure, alone: figure, saved: figure })).describe('Jobs to consider while it is open.'),
    cores: z.array(z.strictObject({ title: z.string(), charge: figure, refund: figure, taxBack: figure, deadline: z.string().nullable(), late: z.boolean() })),
    lines: z.array(line),
    afterStages: z.strictObject({
      authorised: figure,
      left: figure.describe('The total less that, not below nothing.'),
    }).optional().describe('Where a stage is authorised, and the option is not yet: what of the total is authorised already. The total is the same with it.'),
    shopOnly: margin,
  });

  const stage = z.strictObject({
    name: z.string(),
    title: z.string(),
    at: place.optional(),
    complete: z.boolean().describe('False where a line it rests on could not be read or priced.'),
    total: figure.describe('The stage alone, left as it is.'),
    hours: figure,
    putBack: figure.describe('What putting everything back adds, with fees and taxes.'),
    backHours: figure,
    stop: figure.describe('What is owed where the customer stops there and it is put back.'),
    authorised: figure.nullable().describe('What is authorised for it; null where nothing is.'),
    ways: z.array(z.string()).describe('Names of the ways in that it opens.'),
    destroys: z.array(z.string()).describe('Titles of the parts that it destroys.'),
    lines: z.array(line),
    backLines: z.array(line).describe('What putting back adds, fees and taxes left out.'),
  }).describe('Work that comes before the decision. Its work is in the total of every option, once.');

  const flip = z.strictObject({
    line: z.string().describe('The title of the line that the figure is written on.'),
    label: z.string().describe('What the figure is.'),
    at: place.optional(),
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

  const inspection = z.strictObject({
    name: z.string(),
    title: z.string(),
    at: place.optional(),
    price: figure,
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

  const coverage = z.strictObject({
    title: z.string(),
    at: place.optional(),
    sort: z.enum(['recall', 'campaign', 'bulletin', 'extended-warranty']).nullable(),
    answer: z.enum(['covered', 'not covered', 'unknown']).describe('By what is written. No legal conclusion.'),
    conditions: z.array(z.strictObject({ condition: z.string(), holds: z.enum(['yes', 'no', 'unknown']) })),
    options: z.array(z.string()).describe('Names of the options that it would pay for.'),
    sentence: z.string(),
  });

  const authorised = z.strictObject({
    for: z.string().describe('The name of the option or stage.'),
    title: z.string(),
    at: place.optional(),
    on: z.string().nullable().describe('YYYY-MM-DD.'),
    by: z.string().nullable(),
    how: z.enum(['in-person', 'phone', 'message', 'email', 'signed']).nullable(),
    version: z.string().nullable().describe('The version that the customer agreed to, in the shop’s own word.'),
    earlier: z.int().describe('How many authorisations for the same it took the place of.'),
    complete: z.boolean().describe('False where a line of today’s total could not be read or priced.'),
    amount: figure.describe('What was authorised.'),
    total: figure.describe('Today’s total, tax and core charges included.'),
    over: figure.describe('By how much the total is above what was authorised.'),
    room: figure.describe('How far it may be above without asking, by the shop’s own rule.'),
    roomUsed: figure,
    roomLeft: figure,
    aboveRoom: figure.describe('What is above the room too.'),
    since: z.string().nullable().describe('The option that was authorised later, so that this one is not done.'),
    mustAsk: z.boolean().nullable().describe('Whether the customer must be asked by the shop’s own rule; null where that can’t be told or another option was authorised later. No legal conclusion.'),
    sentence: z.string(),
  });

  const state = z.strictObject({
    state: z.enum(['draft', 'quoted', 'authorised', 'in-work', 'closed', 'expired']),
    since: z.string().nullable().describe('YYYY-MM-DD, where the records say.'),
    option: z.string().nullable().describe('The option that was authorised, done, or else quoted last.'),
    validUntil: z.string().nullable().describe('The last day on which the prices hold, while nothing is authorised.'),
    asOf: z.string().describe('The day for which this holds.'),
  }).describe('How far the job has come, by its records.');

  return z.strictObject({
    steelyard: z.literal(1),
    report: z.literal('weigh'),
    title: z.string().nullable(),
    vehicle: z.string().nullable(),
    currency: z.strictObject({ code: z.string().nullable(), digits: z.int() }),
    verdict: z.string(),
    pick: z.string().nullable().describe('The name of the option that is cheapest in all.'),
    state: state.nullable().describe('Null where no day was given to tell it for.'),
    authorised: z.array(authorised).describe('For each option and stage the authorisation that holds, beside what it comes to today.'),
    stages: z.array(stage).optional().describe('Only where there are any.'),
    options: z.array(option),
    flips: z.array(flip).describe('Where a written figure changes which option is the cheapest, all else held; the nearest first.'),
    flipsBeyond: z.array(z.enum(['figures', 'plans'])).describe('Limits of that search which were reached: more figures, or more plans of an option, than it tries.'),
    inspections: z.array(inspection).describe('What could be looked at before deciding.'),
    coverages: z.array(coverage).describe('Recalls and the like, with whether they hold for the vehicle.'),
    cautions: z.array(z.string()),
  }).describe('All options of an estimate, side by side.');
}

export type WeighReport = z.infer<ReturnType<typeof weighReport>>;
