import type { Estimate, Shop } from '../estimate/index.js';
import { Decimal, zero, type Amount } from '../vocabulary/index.js';
import { dayOf, isoOf, monthsAfter, workingDayAfter, workingDaysBetween, type Day } from './calendar.js';
import { found, given, sum, type Figure, type Points } from './figure.js';
import { inHours, workdayOf } from './price-labour.js';
import { toolsOf, type Plan } from './plan.js';

/**
 * When the vehicle is ready, plainly: one technician, one after the other. The engine is got at; then whatever is
 * away or still to arrive is waited for; then the rest of the work is done. The bay plan with several hands and
 * overlapping tasks is another calculation.
 */
export interface Ready {
  /** Working days from the start to the end, the first and the last counted. */
  readonly days: Figure;
  /** Of these, days on which the work stands still. */
  readonly waiting: Figure;
  /** YYYY-MM-DD; undefined where the estimate gives no day to start from. */
  readonly date: string | undefined;
  readonly latest: string | undefined;
}

/** The working days of an open week, and calendar months in working days, where no date is there to count from. */
const WEEKS_PER_MONTH = 52 / 12;

export function readyOf(plan: Plan, goods: Pick<Estimate['options'][number], 'parts' | 'sublets' | 'labour'>, estimate: Estimate): Ready {
  const { shop } = estimate;
  const start = startOf(estimate);
  const workday = workdayOf(shop);
  const strip = sum('Hours until the engine is got at', 'hours', plan.paid.flatMap((way) => (way.remove === undefined ? [] : [inHours(`${way.title}: remove`, way.remove)])));
  const all = plan.totals.hours;

  const parts = [...goods.parts, ...plan.paid.flatMap((way) => way.parts)];
  const tools = [...toolsOf(goods.labour), ...plan.paid.flatMap((way) => way.tools)].filter((tool) => !tool.owned);
  const sublets = [...goods.sublets, ...plan.paid.flatMap((way) => way.sublets)];
  const waits = (label: string, amounts: readonly { readonly title: string; readonly wait: Amount | undefined }[]) =>
    longest(label, amounts.flatMap(({ title, wait }) => (wait === undefined ? [] : [{ figure: given(title, 'days', wait), wait }])), start, shop);
  const arrival = waits('Parts and tools are there after', [...parts, ...tools].map((one) => ({ title: `${one.title} arrives`, wait: one.arrives })));
  const away = waits('Outside work is away for', sublets.map((one) => ({ title: `${one.title} is back`, wait: one.backIn })));

  const at = (point: keyof Points) => {
    const day = workday[point].isZero() ? new Decimal(8) : workday.likely;
    const stripped = strip[point].div(day);
    const resume = Decimal.max(arrival[point], stripped.plus(away[point]));
    const end = resume.plus(all[point].minus(strip[point]).div(day));
    return { waiting: resume.minus(stripped), days: Decimal.max(end.ceil(), 1) };
  };
  const points = { low: at('low'), likely: at('likely'), high: at('high') };
  const days = found('Working days until it is ready', 'days', points.likely.days, 'First the engine is got at; then what is away or still to come is waited for; then the rest of the work is done, one after the other. Whole days, rounded up.', [strip, arrival, away, all, workday]);
  const flat = points.low.days.eq(points.likely.days) && points.high.days.eq(points.likely.days);
  const dateAfter = (days: Decimal) => {
    const day = start === undefined ? undefined : workingDayAfter(start, days.toNumber() - 1, shop);
    return day === undefined ? undefined : isoOf(day);
  };
  return {
    days: flat ? days : { ...days, low: points.low.days, high: points.high.days, ranged: true },
    waiting: found('Days of waiting', 'days', points.likely.waiting, 'The longer of what is still to come and of the outside work, after the engine is got at.', [strip, arrival, away, workday]),
    date: dateAfter(points.likely.days),
    latest: dateAfter(points.high.days),
  };
}

/** The day the work can start: as written, or else the day the estimate was written. */
export function startOf(estimate: Estimate): Day | undefined {
  const iso = estimate.header?.start ?? estimate.header?.written;
  return iso === undefined ? undefined : dayOf(iso);
}

function longest(label: string, waits: readonly { readonly figure: Figure; readonly wait: Amount }[], start: Day | undefined, shop: Shop): Figure {
  const at = (point: keyof Points) => waits.reduce((longestYet, { wait }) => Decimal.max(longestYet, workingDays(wait[point], wait.unit?.word, start, shop)), zero);
  const likely = at('likely');
  const ranged = waits.some(({ wait }) => wait.low !== wait.likely || wait.high !== wait.likely);
  const how = waits.length === 0 ? 'Nothing is waited for.' : 'The longest of these, in working days.';
  return { ...found(label, 'days', likely, how, waits.map(({ figure }) => figure)), ...(ranged ? { low: at('low'), high: at('high'), ranged } : {}) };
}

/** A wait in working days: d are working days already; wk and mo run by the calendar from the start. */
function workingDays(value: Decimal, unit: string | undefined, start: Day | undefined, shop: Shop): Decimal {
  if (unit !== 'wk' && unit !== 'mo') return value;
  if (start === undefined) {
    const perWeek = 7 - shop.closedWeekdays.size;
    return value.times(unit === 'wk' ? perWeek : perWeek * WEEKS_PER_MONTH).ceil();
  }
  const whole = Math.min(value.ceil().toNumber(), 1200);
  const end = unit === 'wk' ? start + Math.min(value.times(7).ceil().toNumber(), 8400) : monthsAfter(start, whole);
  return new Decimal(workingDaysBetween(start, end - 1, shop));
}
