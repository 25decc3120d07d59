/**
 * What follows from an option's total: what comes back, what is paid in the end, worth given up, margin, days without the
 * vehicle, and work that could be done while it is open. Worked out from the records alone, without a line of the product.
 */
import { daysBetween, daysLater, monthsLater, workingDayAfter } from './day-walk.js';
import { add, addHours, amount, each, less, list, NO_COINS, three, type Coins, type Line, type Three } from './prices.js';
import { compare, fromDigits, minus, per, plus, times, whole, type Rational } from './rational.js';
import type { Json, Written } from './reader.js';
import { likely, type Oracle, type OracleOption, type OraclePlan } from './totals.js';

export interface CoreBack {
  readonly part: Json;
  readonly title: string;
  readonly charge: Coins;
  readonly refund: Coins;
  readonly taxBack: Coins;
  readonly taxKept: Coins;
  readonly deadline: string | undefined;
  readonly late: boolean;
}

export function startOf({ prices }: Oracle): string | undefined {
  const header = prices.all.find(({ kind }) => kind === 'estimate');
  return (header?.['start'] ?? header?.['written']) as string | undefined;
}

const floor = (value: Rational) => Number(value.n / value.d);
export const ceiling = (value: Rational) => Number((value.n + value.d - 1n) / value.d);

/** Calendar months on from a day, and of a part of one that part of the days of the month it runs in, made whole days by `toDays`. */
export function monthsOn(from: string, months: Rational, toDays: (days: Rational) => number): string {
  const begun = monthsLater(from, floor(months));
  const days = daysBetween(begun, monthsLater(from, floor(months) + 1)) - 1;
  return daysLater(begun, toDays(times(minus(months, whole(BigInt(floor(months)))), whole(BigInt(days)))));
}

/** A term by the calendar from a day on: days and weeks of seven days, calendar months and parts of them; a day that is begun doesn't count. */
function later(from: string, time: Written): string {
  const value = fromDigits(time.likely);
  return time.unit === 'mo' ? monthsOn(from, value, floor) : daysLater(from, floor(time.unit === 'wk' ? times(value, whole(7n)) : value));
}

/** The day on which something arrives: working days, or weeks and months by the calendar; a day that is begun counts. */
function arrivalOf(shop: Json, from: string, { likely: value, unit }: Written): string {
  const count = fromDigits(value);
  if (unit === 'mo') return monthsOn(from, count, ceiling);
  return unit === 'wk' ? daysLater(from, ceiling(times(count, whole(7n)))) : workingDayAfter(shop, from, ceiling(count));
}

/** The day on which a part is ordered, by its title, as the product tells it. */
export type Ordered = (title: string) => string | undefined;

/** The day on which a plan is ready, and those on which its parts are ordered. */
export interface PlannedDays {
  readonly ready: string | undefined;
  readonly ordered: Ordered;
}

export const NO_DAYS: PlannedDays = { ready: undefined, ordered: () => undefined };

/** Days as the product tells them in its calendar. */
export function daysTold({ ready, tasks }: { readonly ready: string | null; readonly tasks: readonly { readonly kind: string; readonly title: string; readonly from: string | null }[] }): PlannedDays {
  const ordered = new Map(tasks.flatMap(({ kind, title, from }) => (kind === 'part' && from !== null ? [[title, from] as const] : [])));
  return { ready: ready ?? undefined, ordered: (title) => ordered.get(`${title} arrives`) };
}

/** Parts are ordered when the customer has said yes. Where something is done before that, the day is the product's: `days.test.ts` works it out. */
function orderedOn({ prices }: Oracle, { jobs }: OraclePlan, start: string, part: Json, ordered: Ordered): string {
  const { shop } = prices;
  if (prices.all.some(({ kind }) => kind === 'stage') || jobs.some(({ job }) => job['done'] === 'first')) return ordered(part.title as string) ?? start;
  const answer = amount(prices.all.find(({ kind }) => kind === 'estimate')?.['answer']);
  const first = workingDayAfter(shop, start, 0);
  return answer === undefined ? first : workingDayAfter(shop, arrivalOf(shop, first, answer), 0);
}

/** The core is due so long after the part arrives; what says nothing of it is there at the start. */
function deadlineOf(oracle: Oracle, plan: OraclePlan, part: Json, core: Json, ordered: Ordered): string | undefined {
  const start = startOf(oracle);
  const due = amount(core['due']);
  if (start === undefined || due === undefined) return undefined;
  const arrives = amount(part['arrives']);
  return later(arrives === undefined ? start : arrivalOf(oracle.prices.shop, orderedOn(oracle, plan, start, part, ordered), arrives), due);
}

/** Cores that go back, with the refund that is left when the vehicle is ready on a day; nothing comes back too late. */
export function coresOf(oracle: Oracle, plan: OraclePlan, { ready, ordered }: PlannedDays): CoreBack[] {
  const { prices } = oracle;
  return plan.lines.filter(({ kind }) => kind === 'core').map(({ record: part, coins: charge }) => {
    const core = list(part['core'])[0] as Json;
    const deadline = deadlineOf(oracle, plan, part, core, ordered);
    const late = deadline !== undefined && ready !== undefined && ready > deadline;
    const reduced = [core, ...list(core['keeps'])].flatMap((one) => (one['less'] === undefined ? [] : [prices.coins(three(one['less'] as Written))]));
    const left = less(charge, add(reduced));
    const refund = late ? NO_COINS : each((i) => (left[i] < 0n ? 0n : left[i]));
    const policy = prices.coreTax(part['condition']);
    const onParts = list(prices.shop['tax']).filter((tax) => (tax['on'] as string[]).includes('parts'));
    const taxOn = (base: Coins, taxes: typeof onParts) => add(taxes.map((tax) => prices.share(base, tax['percent'] as Written)));
    const taxBack = taxOn(refund, policy === 'refunded' ? onParts : []);
    const taxKept = less(taxOn(charge, policy === 'refunded' || policy === 'kept' ? onParts : []), taxBack);
    return { part, title: part.title as string, charge, refund, taxBack, taxKept, deadline, late };
  });
}

/** Core refunds with their tax, pieces kept from cores that go back, and pieces taken off the old engine. */
export function comesBack(oracle: Oracle, option: OracleOption, plan: OraclePlan, days: PlannedDays): Coins {
  const { prices } = oracle;
  const kept = plan.lines.filter(({ kind }) => kind === 'core').flatMap(({ record }) => list(list(record['core'])[0]?.['keeps']).flatMap((piece) => piece['worth'] ?? []));
  const taken = list(option.record['harvest']).flatMap((piece) => piece['value'] ?? []);
  return add([...coresOf(oracle, plan, days).flatMap(({ refund, taxBack }) => [refund, taxBack]), ...[...kept, ...taken].map((worth) => prices.coins(three(worth as Written)))]);
}

/** The most that any option leaves, less what this one leaves; undefined where some option's worth is unknown. Not rounded. */
export function givenUp({ prices, options }: Oracle, option: OracleOption): Three | undefined {
  const vehicle = prices.all.find(({ kind }) => kind === 'vehicle');
  const worthOf = ({ record }: OracleOption) => (record['worth'] ?? vehicle?.['worth']) as Written | undefined;
  const worths = options.map(worthOf);
  if (worths.some((worth) => worth === undefined)) return undefined;
  const all = worths.map((worth) => three(worth as Written));
  const most = each((i) => all.map((one) => one[i]).reduce((a, b) => (compare(a, b) < 0 ? b : a)));
  const own = three(worthOf(option) as Written);
  return each((i) => minus(most[i], own[i]));
}

export interface MarginBy {
  readonly sort: string;
  readonly sold: Coins;
  readonly cost: Coins;
  readonly margin: Coins;
  readonly unknown: number;
}

/** Sold and paid of the lines whose cost is written; how many with an amount say nothing of it. */
export function marginOf(plan: OraclePlan): MarginBy[] {
  return ([['labour', 'labour'], ['parts', 'part'], ['outside', 'sublet']] as const).map(([sort, kind]) => {
    const lines = plan.lines.filter((line) => line.kind === kind);
    const known = lines.filter((line): line is Line & { readonly cost: Coins } => line.cost !== undefined);
    const sold = add(known.map((line) => line.coins));
    const cost = add(known.map((line) => line.cost));
    return { sort, sold, cost, margin: less(sold, cost), unknown: lines.filter((line) => line.cost === undefined && line.coins[1] !== 0n).length };
  });
}

/** Coins by a count, in coins; undefined where there is nothing to divide by. */
export function shared({ prices }: Oracle, coins: bigint, count: Rational): bigint | undefined {
  return count.n === 0n ? undefined : prices.coin({ n: coins * count.d, d: count.n * 10n ** BigInt(prices.digits) });
}

/** What the days until it is ready cost the customer, by the calendar where there is a date, in coins. */
export function downtimeOf(oracle: Oracle, ready: string | undefined, workingDays: number): bigint | undefined {
  const daily = likely(oracle.prices.all.find(({ kind }) => kind === 'vehicle')?.['downtime']);
  if (daily === undefined) return undefined;
  const start = startOf(oracle);
  const days = start === undefined || ready === undefined ? workingDays : daysBetween(start, ready);
  return oracle.prices.coin(times(daily, whole(BigInt(days))));
}

export interface Monthly {
  readonly now: Three;
  readonly months: number;
  /** In the shop's money, not rounded: powers make digits without end. */
  readonly perMonth: number;
}

/** Mean days of a calendar month: 400 years of the Gregorian calendar have 146 097 days and 4800 months. */
const DAYS_PER_MONTH = 146_097 / 4800;

/** Capital recovery of what is put in now less the sinking fund of the resale, a twelfth of the year's interest in a month. */
export function monthlyOf({ prices }: Oracle, option: OracleOption, net: Coins): Monthly | undefined {
  const lasts = amount(option.record['lasts']);
  if (lasts === undefined) return undefined;
  const months = Number(lasts.likely) * (lasts.unit === 'mo' ? 1 : (lasts.unit === 'wk' ? 7 : 1) / DAYS_PER_MONTH);
  if (months < 1) return undefined;
  const of = (kind: string, key: string) => amount(prices.all.find((one) => one.kind === kind)?.[key]);
  const number = ({ n, d }: Rational) => Number(n) / Number(d);
  const standing = of('vehicle', 'unrepaired');
  const now = each((i) => plus(per(whole(net[i]), 10n ** BigInt(prices.digits)), standing === undefined ? whole(0n) : three(standing)[i]));
  const resale = number(likely(option.record['resale']) ?? whole(0n));
  const rate = Number(of('estimate', 'interest')?.likely ?? 0) / 1200;
  const growth = (1 + rate) ** months;
  const sinking = rate === 0 ? 1 / months : rate / (growth - 1);
  return { now, months, perMonth: number(now[1]) * (sinking + rate) - resale * sinking };
}

export interface OpenNow {
  readonly job: string;
  readonly now: bigint;
  readonly alone: bigint;
}

/** Work to consider: what it adds to the option, and what it comes to on its own later. */
export function openOf({ prices, work }: Oracle, option: OracleOption, plan: OraclePlan): OpenNow[] {
  const done = new Set(plan.jobs.map(({ job }) => job.name));
  const wanted = [...new Set(prices.all.filter(({ kind }) => kind === 'consider').flatMap((one) => prices.named('labour', one['labour'])))];
  return wanted.filter((job) => !done.has(job.name)).flatMap((job) => {
    const { record } = option;
    const [both] = work.option({ ...record, do: [...((record['do'] ?? []) as string[]), job.name] }, { stages: work.stages, then: 'closed' }).best;
    const [alone] = work.option({ kind: 'option', do: [job.name] }, { stages: [], then: 'closed' }).best;
    if (both === undefined || alone === undefined || compare(minus(both.hours[1], plan.hours[1]), alone.hours[1]) >= 0) return [];
    return [{ job: job.name as string, now: both.total[1] - plan.total[1], alone: alone.total[1] }];
  });
}

/** The price of an inspection: its hours and its own price with tax, without any fee of the shop. */
export function inspectionPrice({ prices }: Oracle, record: Json): Coins {
  const hours = amount(record['hours']);
  const price = amount(record['price']);
  const lines: Line[] = hours === undefined ? [] : [prices.work(record, hours, record['class'], false)];
  if (price !== undefined) lines.push({ kind: 'fee', access: false, coins: prices.coins(three(price)), hours: addHours([]), cost: undefined, taxed: false, record });
  return add([...lines.map(({ coins }) => coins), prices.taxes(lines)]);
}
