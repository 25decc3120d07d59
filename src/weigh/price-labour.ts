import { Slot } from '../language/index.js';
import { heldByPriced, type Access, type Labour, type Mode, type Rate, type Shop, type Tool } from '../estimate/index.js';
import { constant, found, given, hoursProduct, product, sum, type Figure } from './figure.js';
import { keeper } from './keep.js';
import type { Line } from './line.js';
import type { Money } from './money.js';
import { times, zero, type Amount, type Decimal } from '../vocabulary/index.js';

const MINUTES = 60;
const keepPrice = keeper<Rate, Figure>();

/** Hours and money of one stretch of work. Minutes are divided last, so that money stays exact. */
function work(label: string, what: string, hours: Amount, count: Figure | undefined, rate: Rate | undefined, money: Money): { readonly hours: Figure; readonly amount: Figure } {
  const minutes = isInMinutes(hours);
  const per = minutes ? MINUTES : 1;
  const time = given(what, minutes ? 'minutes' : 'hours', hours);
  const factors = count === undefined ? [time] : [count, time];
  const worked = minutes || count !== undefined ? hoursProduct(`${label}, hours`, factors, per) : time;
  if (rate === undefined) return { hours: worked, amount: found(label, 'money', zero, 'No rate is known for this work, so it has no price yet.', [worked]) };
  const price = keepPrice(rate, [], () => given(`${rate.title}, an hour`, 'money', rate.price));
  return { hours: worked, amount: product(label, [...factors, price], money, hours.at, per) };
}

function isInMinutes({ unit }: Amount): boolean {
  return unit?.word === 'min';
}

/** What a job comes to in one of its modes: the likely amount of its line, without the line. */
export function labourPrice({ count, rate }: Labour, { hours }: Mode, money: Money): Decimal {
  if (rate === undefined) return zero;
  const time = count === undefined ? hours.likely : times(count.likely, hours.likely);
  const exact = times(time, rate.price.likely);
  return money.round(isInMinutes(hours) ? exact.div(MINUTES) : exact);
}

interface Kept {
  readonly job: Labour;
  readonly money: Money;
  readonly line: Line;
}

const lines = new Slot<Kept>(heldByPriced);

/** The line of a job done in one of its modes. */
export function labourLine(job: Labour, mode: Mode, money: Money): Line {
  const before = lines.get(mode);
  if (before !== undefined && before.job === job && before.money === money) return before.line;
  const line = makeLabourLine(job, mode, money);
  lines.set(mode, { job, money, line });
  return line;
}

function makeLabourLine(job: Labour, mode: Mode, money: Money): Line {
  const count = job.count === undefined ? undefined : given('Times', 'number', job.count);
  const { hours, amount } = work(job.title, timeLabel(job, mode), mode.hours, count, job.rate, money);
  return {
    kind: 'labour', share: 'work', title: job.title, name: job.name, at: job.at, record: job.record, amount, hours, quantity: count, condition: undefined,
    with: mode.with.map((way) => way.name),
  };
}

/** Which of a job's times it is, where there are several. */
function timeLabel(job: Labour, { with: ways }: Mode): string {
  if (job.modes.length < 2) return 'Time';
  return ways.length === 0 ? 'Time in the car' : `Time with ${ways.map(({ name }) => name).join(' and ')}`;
}

/** The lines of opening and closing one way in: two stretches of work, its parts and its outside work are priced apart. */
export function accessWork(way: Access, money: Money, stretches: readonly ('remove' | 'refit')[] = ['remove', 'refit']): Line[] {
  const lines: Line[] = [];
  for (const what of stretches) {
    const hours = way[what];
    if (hours === undefined) continue;
    const title = `${way.title}: ${what}`;
    const priced = work(title, what === 'remove' ? 'Time to remove' : 'Time to refit', hours, undefined, way.rate, money);
    lines.push({
      kind: 'labour', share: 'access', title, name: way.name, at: hours.at, record: way.record,
      amount: priced.amount, hours: priced.hours, quantity: undefined, condition: undefined, with: [way.name],
    });
  }
  return lines;
}

/** Work that belongs to a line of another kind, such as putting a core together before it goes back. */
export function hoursLine(title: string, hours: Amount, rate: Rate | undefined, line: Pick<Line, 'at' | 'record'>, money: Money): Line {
  const priced = work(title, 'Time', hours, undefined, rate, money);
  return { kind: 'labour', share: 'work', title, name: undefined, at: line.at, record: line.record, amount: priced.amount, hours: priced.hours, quantity: undefined, condition: undefined, with: [] };
}

/** The hire of a special tool that the shop does not own. */
export function toolLine(tool: Tool, share: Line['share'], money: Money): Line | undefined {
  if (tool.owned || tool.price === undefined) return undefined;
  const hire = given('Hire', 'money', tool.price);
  return {
    kind: 'fee', share, title: `${tool.title}: hire`, name: tool.name, at: tool.at, record: tool.record,
    amount: product(`${tool.title}: hire`, [hire], money, tool.at), hours: undefined, quantity: undefined, condition: undefined, with: [],
  };
}

export function hoursOf(label: string, lines: readonly Line[]): Figure {
  const hours: Figure[] = [];
  for (const line of lines) if (line.hours !== undefined) hours.push(line.hours);
  return sum(label, 'hours', hours);
}

/** The hours of a working day; eight where the shop says nothing. */
export function workdayOf(shop: Shop): Figure {
  return shop.workday === undefined ? constant('Working day, taken as 8 h', 'hours', zero.plus(8)) : inHours('Working day', shop.workday);
}

/** A written time in hours. */
export function inHours(label: string, hours: Amount): Figure {
  return isInMinutes(hours) ? hoursProduct(label, [given(label, 'minutes', hours)], MINUTES) : given(label, 'hours', hours);
}
