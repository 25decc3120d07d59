import * as z from 'zod';
import type { Span } from '../language/index.js';
import type { Comparison, Figure, Line, Plan, Weighed } from '../weigh/index.js';
import { cautionLines, estimateNotice } from './cautions.js';
import { figureNames, figureOf, lineId, type FigureName } from './figures.js';
import { verdict } from './verdict.js';

const digits = z.string().regex(/^-?\d+(\.\d+)?$/).describe('Decimal digits; never a binary float.');

const figure = z.strictObject({
  low: digits.describe('If every figure comes in low.'),
  likely: digits.describe('The quoted one.'),
  high: digits.describe('If every figure comes in high.'),
  unit: z.enum(['money', 'hours', 'minutes', 'percent', 'number', 'days']),
}).describe('A figure at its three points; money in the currency named at the top.');

const place = z.strictObject({
  file: z.string(),
  line: z.int().describe('From 1.'),
  column: z.int().describe('From 1, in UTF-16 units.'),
}).describe('Where it was written.');

const plan = z.strictObject({
  ways: z.array(z.string()).describe('Names of the ways in that are paid for; empty means in the car.'),
  total: digits,
  hours: digits,
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

const option = z.strictObject({
  name: z.string(),
  title: z.string(),
  complete: z.boolean().describe('False where a line it rests on could not be read or priced.'),
  rank: z.int().nullable().describe('1 is the cheapest in all; null where it is not complete.'),
  figures: z.record(z.string(), figure).describe('By name, as for --explain OPTION.NAME.'),
  ready: z.strictObject({ date: z.string().nullable(), latest: z.string().nullable() }),
  ways: z.strictObject({ pinned: z.boolean(), chosen: plan, others: z.array(plan), unpinned: plan.nullable().describe('Where the ways are pinned: the best without the pin.') }),
  open: z.array(z.strictObject({ job: z.string(), title: z.string(), now: figure, alone: figure, saved: figure })).describe('Jobs to consider while it is open.'),
  cores: z.array(z.strictObject({ title: z.string(), charge: figure, refund: figure, taxBack: figure, deadline: z.string().nullable(), late: z.boolean() })),
  lines: z.array(line),
});

/** What `steelyard weigh --json` prints; the schema in schemas/ is emitted from this. */
export const weighReport = z.strictObject({
  steelyard: z.literal(1),
  report: z.literal('weigh'),
  title: z.string().nullable(),
  vehicle: z.string().nullable(),
  currency: z.strictObject({ code: z.string().nullable(), digits: z.int() }),
  verdict: z.string(),
  pick: z.string().nullable().describe('The name of the option that is cheapest in all.'),
  options: z.array(option),
  cautions: z.array(z.string()),
}).describe('All options of an estimate, side by side.');

export type WeighReport = z.infer<typeof weighReport>;

/** Where a span is; undefined where its file is not at hand. */
export type PlaceOf = (span: Span) => { readonly file: string; readonly line: number; readonly column: number } | undefined;

export function weighJson(comparison: Comparison, placeOf: PlaceOf): WeighReport {
  const { estimate, options, ranking, money } = comparison;
  return {
    steelyard: 1,
    report: 'weigh',
    title: estimate.header?.title ?? null,
    vehicle: estimate.vehicle?.title ?? null,
    currency: { code: money.currency.code === '' ? null : money.currency.code, digits: money.currency.digits },
    verdict: verdict(comparison),
    pick: ranking[0]?.option.name ?? null,
    options: options.map((one) => optionJson(one, comparison, placeOf)),
    cautions: [...estimateNotice, ...cautionLines(options.flatMap((one) => one.cautions))],
  };
}

function optionJson(weighed: Weighed, { ranking, money }: Comparison, placeOf: PlaceOf): WeighReport['options'][number] {
  const points = (one: Figure) => figureJson(one, money.currency.digits);
  const planJson = (one: Plan) => ({ ways: one.paid.map((way) => way.name), total: one.money.toFixed(money.currency.digits), hours: one.hours.toFixed() });
  const { planned, ready, returns, option: { name, title, way } } = weighed;
  const rank = ranking.indexOf(weighed);
  const figures = (Object.keys(figureNames) as FigureName[]).flatMap((key) => {
    const found = figureOf(weighed, key);
    return found === undefined ? [] : [[key, points(found)] as const];
  });
  return {
    name,
    title,
    complete: weighed.complete,
    rank: rank < 0 ? null : rank + 1,
    figures: Object.fromEntries(figures),
    ready: { date: ready.date ?? null, latest: ready.latest ?? null },
    ways: { pinned: way !== undefined, chosen: planJson(planned.chosen), others: planned.others.map(planJson), unpinned: planned.unpinned === undefined ? null : planJson(planned.unpinned) },
    open: weighed.open.map((one) => ({ job: one.job.name ?? '', title: one.job.title, now: points(one.now), alone: points(one.alone), saved: points(one.saved) })),
    cores: returns.cores.map((core) => ({ title: core.part.title, charge: points(core.charge), refund: points(core.refund), taxBack: points(core.taxBack), deadline: core.deadline ?? null, late: core.late })),
    lines: weighed.totals.lines.map((one, i) => lineJson(one, lineId(weighed, i), points, placeOf)),
  };
}

function lineJson(one: Line, id: string, points: (from: Figure) => z.infer<typeof figure>, placeOf: PlaceOf): z.infer<typeof line> {
  const at = placeOf(one.at);
  return {
    id,
    kind: one.kind,
    share: one.share,
    title: one.title,
    ...(one.name === undefined ? {} : { name: one.name }),
    amount: points(one.amount),
    ...(one.hours === undefined ? {} : { hours: points(one.hours) }),
    ...(one.quantity === undefined ? {} : { quantity: points(one.quantity) }),
    ...(one.condition === undefined ? {} : { condition: one.condition }),
    with: [...one.with],
    ...(at === undefined ? {} : { at }),
  };
}

/** Money with all its decimals; hours that don't end (10 min) to the sixth decimal. */
function figureJson(one: Figure, moneyDigits: number): z.infer<typeof figure> {
  const text = (value: Figure['likely']) => (one.unit === 'money' && value.decimalPlaces() <= moneyDigits ? value.toFixed(moneyDigits) : value.toDecimalPlaces(6).toFixed());
  return { low: text(one.low), likely: text(one.likely), high: text(one.high), unit: one.unit };
}
