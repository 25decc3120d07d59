import type { Span } from '../language/index.js';
import type { Access, Actual, Closed, Part, Shop, Source, Sublet } from '../estimate/index.js';
import { Decimal, hundred, type Amount, type Record } from '../vocabulary/index.js';
import { authorisedElse, authorisedIn, type AuthorisedWeighed } from './authorised.js';
import { dayOf, workingDaysBetween } from './calendar.js';
import { difference, found, given, product, sum, type Figure } from './figure.js';
import type { Line } from './line.js';
import type { Money } from './money.js';
import { inHours } from './price-labour.js';
import type { Comparison, Weighed } from './weigh.js';

/** One line of a closing: what was estimated beside what it really was. What nobody wrote down is undefined, never nothing. */
export interface ClosedLine {
  readonly title: string;
  readonly name: string | undefined;
  /** Where the estimate says it, or else the closing. */
  readonly at: Span;
  /** False where the option, as it was planned, has no such line. */
  readonly planned: boolean;
  /** The ways in that its hours take. */
  readonly with: readonly string[];
  /** Undefined where it was not planned, or where the estimate does not know it, such as the cost of a part with a price. */
  readonly estimated: Figure | undefined;
  /** Undefined where nobody recorded it. */
  readonly actual: Figure | undefined;
  /** What it was more than estimated; less is below nothing. */
  readonly over: Figure | undefined;
}

/**
 * Lines and their sums. Where an estimate and a record stand side by side they are compared; a record without an
 * estimate is beyond it; an estimate without a record is open. So what was recorded in all is `actual` and `beyond`, and
 * what was estimated in all is `estimated` and `open`.
 */
export interface ClosedPart {
  readonly lines: readonly ClosedLine[];
  readonly estimated: Figure;
  readonly actual: Figure;
  readonly over: Figure;
  readonly beyond: Figure;
  readonly open: Figure;
}

export interface Closing {
  readonly closed: Closed;
  /** The option that was done, as the estimate weighs it. */
  readonly weighed: Weighed;
  readonly hours: ClosedPart;
  /** What the shop paid, beside the cost where the estimate knows it. */
  readonly paid: ClosedPart;
  /** Core money that came back, beside the refund that was expected. */
  readonly cores: ClosedPart;
  /** Working days from the start to the closing, both counted, beside the planned ones. */
  readonly days: ClosedLine;
  readonly billed: ClosedLine;
  /** What was authorised for it, beside what was billed; undefined where nothing was, or what was billed is not known. */
  readonly authorised: { readonly standing: AuthorisedWeighed; readonly line: ClosedLine } | undefined;
  /** What was authorised last, where that is not what was done. */
  readonly authorisedElse: AuthorisedWeighed['of'] | undefined;
  /** Ways in that were clocked and not planned, and those planned and not clocked, where any was clocked. */
  readonly otherWays: { readonly taken: readonly Access[]; readonly left: readonly Access[] };
}

/** What a job that is over took, beside what was estimated for the option that was done; undefined where nothing was done or the estimate is not closed. */
export function closingOf(comparison: Comparison): Closing | undefined {
  const { estimate, options, money } = comparison;
  const { closed, started, shop } = estimate;
  if (closed === undefined) return undefined;
  const weighed = options.find(({ option }) => option === closed.option);
  if (weighed === undefined) return undefined;
  const { planned: { chosen }, totals, returns, ready } = weighed;
  const inMoney: FigureOf = (label, amount) => product(label, [given(label, 'money', amount)], money, amount.at);
  const refunds = returns.cores.map(({ part, refund }): Planned => ({ record: part.record, title: part.title, name: part.name, at: part.at, with: [], estimated: refund }));
  const alone = (title: string, estimated: Figure, actual: Figure | undefined) => lineOf({ title, name: undefined, at: closed.at, with: [], estimated }, actual);
  const clocked = new Set(closed.clocked.map(({ line }) => line?.record));
  const standing = authorisedIn(comparison).find(({ of, against }) => of === closed.option && against === 'billed');
  const taken = estimate.access.filter(({ record }) => clocked.has(record));
  return {
    closed,
    weighed,
    hours: partOf('hours', plannedHours(totals.lines, chosen.paid), closed.clocked, inHours),
    paid: partOf('money', plannedGoods(closed, weighed, money), closed.paid, inMoney),
    cores: partOf('money', refunds, closed.credited, inMoney),
    days: alone('Working days', ready.days, daysTaken(started?.on, closed.on, shop)),
    billed: alone('Billed', totals.total, closed.billed === undefined ? undefined : inMoney('Billed', oneFigure(closed.billed))),
    authorised: standing === undefined ? undefined : { standing, line: alone('Billed, beside what was authorised', standing.amount, standing.total) },
    authorisedElse: authorisedElse(estimate),
    otherWays: taken.length === 0 ? { taken: [], left: [] } : { taken: taken.filter((way) => !chosen.paid.includes(way)), left: chosen.paid.filter((way) => !taken.includes(way)) },
  };
}

/** A line of the plan, by the record that it was written on. */
interface Planned extends Pick<ClosedLine, 'title' | 'name' | 'at' | 'with' | 'estimated'> {
  readonly record: Record;
}

type AnyActual = Actual<Pick<Source, 'record'>>;
type FigureOf = (label: string, amount: Amount) => Figure;

/** Opening and closing a way in are clocked as one. */
function plannedHours(lines: readonly Line[], ways: readonly Access[]): Planned[] {
  const byRecord = new Map<Record, { readonly first: Line; readonly hours: Figure[] }>();
  for (const one of lines) {
    if (one.hours === undefined) continue;
    const before = byRecord.get(one.record);
    if (before === undefined) byRecord.set(one.record, { first: one, hours: [one.hours] });
    else before.hours.push(one.hours);
  }
  return [...byRecord].map(([record, { first, hours }]): Planned => {
    const way = ways.find((other) => other.record === record);
    const title = way === undefined ? first.title : `${way.title}: remove and refit`;
    return { record, title, name: first.name, at: way?.at ?? first.at, with: way === undefined ? first.with : [], estimated: hours.length === 1 ? hours[0] : sum(title, 'hours', hours) };
  });
}

/** Parts and outside work of the plan; a fee is asked of the customer, and stands here only where the shop paid something for it. */
function plannedGoods({ paid }: Closed, { option, planned, totals }: Weighed, money: Money): Planned[] {
  const goods = new Map<Record, Part | Sublet>([option, ...planned.chosen.paid].flatMap(({ parts, sublets }) => [...parts, ...sublets]).map((one) => [one.record, one]));
  const paidFor = new Set(paid.map(({ line }) => line?.record));
  return totals.lines.flatMap((one): Planned[] => {
    const good = one.kind === 'part' || one.kind === 'sublet' ? goods.get(one.record) : undefined;
    if (one.condition === 'customer-supplied' || (good === undefined && !paidFor.has(one.record))) return [];
    return [{ record: one.record, title: one.title, name: one.name, at: one.at, with: [], estimated: good === undefined ? undefined : costOf(good, money) }];
  });
}

/** What goods cost the shop; a price alone says nothing of that. */
function costOf({ title, quantity, cost, at }: Part | Sublet, money: Money): Figure | undefined {
  if (cost === undefined) return undefined;
  const each = given('Cost', 'money', cost);
  return product(`${title}: cost`, quantity === undefined ? [each] : [given('Quantity', 'number', quantity), each], money, at);
}

function partOf(unit: 'hours' | 'money', planned: readonly Planned[], actuals: readonly AnyActual[], figureOf: FigureOf): ClosedPart {
  const recorded = (title: string, one: AnyActual | undefined) => (one === undefined ? undefined : figureOf(title, oneFigure(one.amount)));
  const lines = planned.map((one) => lineOf(one, recorded(one.title, actuals.find(({ line }) => line?.record === one.record))));
  const beyond = actuals.filter(({ line }) => !planned.some(({ record }) => record === line?.record)).map((one): ClosedLine => {
    const title = one.line?.record.title?.text ?? one.says;
    return { ...lineOf({ title, name: title === one.says ? undefined : one.says, at: one.at, with: [], estimated: undefined }, recorded(title, one)), planned: false };
  });
  const all = [...lines, ...beyond];
  const added = (label: string, pick: (one: ClosedLine) => Figure | undefined) => sum(label, unit, all.flatMap((one) => pick(one) ?? []));
  const estimated = added('Estimated, of what was recorded', (one) => (one.actual === undefined ? undefined : one.estimated));
  const actual = added('Recorded, of what was estimated', (one) => (one.estimated === undefined ? undefined : one.actual));
  return {
    lines: all, estimated, actual,
    over: difference('More than estimated', unit, [actual, estimated]),
    beyond: added('Recorded, not in the estimate', (one) => (one.estimated === undefined ? one.actual : undefined)),
    open: added('Estimated, not recorded', (one) => (one.actual === undefined ? one.estimated : undefined)),
  };
}

function lineOf(planned: Omit<Planned, 'record'>, actual: Figure | undefined): ClosedLine {
  const { title, name, at, with: ways, estimated } = planned;
  const over = estimated === undefined || actual === undefined ? undefined : difference(`${title}: more than estimated`, actual.unit, [actual, estimated]);
  return { title, name, at, planned: true, with: ways, estimated, actual, over };
}

/** What really was is one figure. */
function oneFigure(amount: Amount): Amount {
  return { ...amount, low: amount.likely, high: amount.likely };
}

/** Working days from the day on which work started to that of the closing, both counted; unknown where one is missing or they run backwards. */
function daysTaken(started: string | undefined, closed: string | undefined, calendar: Shop): Figure | undefined {
  if (started === undefined || closed === undefined || closed < started) return undefined;
  return found('Working days taken', 'days', new Decimal(workingDaysBetween(dayOf(started), dayOf(closed), calendar)), `From ${started} to ${closed} by the shop’s calendar, both counted.`);
}

/** How far off it was, in percent of the estimate; undefined where nothing was estimated. */
export function percentOver({ estimated, over }: { readonly estimated: Figure | undefined; readonly over: Figure | undefined }): Decimal | undefined {
  if (estimated === undefined || over === undefined || estimated.likely.isZero()) return undefined;
  return over.likely.times(hundred).div(estimated.likely);
}
