import { monthsIn, type Estimate, type Option } from '../../estimate/index.js';
import { Decimal, zero } from '../../vocabulary/index.js';
import type { Money } from '../money.js';
import { constant, found, given, sum, type Figure } from '../figure.js';
import { dayOf } from '../calendar.js';
import { startOf } from '../ready.js';
import type { Weighed } from '../weigh.js';
import { equivalentPerPeriod, monthlyOfNominal } from './time-value.js';

/** What an option costs in each month of the service that is expected after it. */
export interface Monthly {
  readonly option: Option;
  readonly months: Decimal;
  /** What is paid in the end and, where it is known, what the vehicle would bring as it stands: keeping it costs that too. */
  readonly now: Figure;
  readonly resale: Figure;
  readonly perMonth: Figure;
}

/** Undefined where the option does not say how long the vehicle then lasts, or not even a month. */
export function monthlyOf(weighed: Weighed, estimate: Estimate, money: Money): Monthly | undefined {
  const { option, net } = weighed;
  if (option.lasts === undefined) return undefined;
  const months = monthsIn(option.lasts);
  if (months.lt(1)) return undefined;
  const { vehicle, header } = estimate;
  const interest = header?.interest === undefined ? constant('Interest for a year, taken as none', 'percent', zero) : given('Interest for a year', 'percent', header.interest);
  const resale = option.resale === undefined ? constant('Resale, taken as nothing', 'money', zero) : given('Resale at the end', 'money', option.resale);
  const kept = vehicle?.unrepaired === undefined ? [] : [given('What it would bring as it stands', 'money', vehicle.unrepaired)];
  const now = sum('Put in now', 'money', [net, ...kept]);
  const rate = monthlyOfNominal(interest.likely.div(100));
  if (rate.kind === 'refused') return undefined;
  const even = equivalentPerPeriod({ now: now.likely, periodic: zero, atEnd: resale.likely.neg(), rate: rate.value, periods: months.toNumber() });
  if (even.kind === 'refused') return undefined;
  const amount = money.round(even.value.amount);
  const how = `Spread evenly over ${months.toDecimalPlaces(1).toFixed()} months with a twelfth of the year’s interest in each, less what it brings at the end (capital recovery).`;
  return { option, months, now, resale, perMonth: found('Cost in each month of service', 'money', amount, how, [now, resale, interest]) };
}

/** What days without the vehicle cost the customer; shown apart from the quote. */
export function downtimeOf(weighed: Weighed, estimate: Estimate, money: Money): Figure | undefined {
  const daily = estimate.vehicle?.downtime;
  if (daily === undefined || !weighed.option.written) return undefined;
  const start = startOf(estimate);
  const { days, date } = weighed.ready;
  const away = start === undefined || date === undefined
    ? days
    : found('Days without it, by the calendar', 'days', new Decimal(dayOf(date) - start + 1), 'From the first day to the one on which it is ready, both counted.', [days]);
  const each = given('A day without the vehicle', 'money', daily);
  const amount = money.round(away.likely.times(each.likely));
  return found('Days without the vehicle', 'money', amount, 'The days at what each costs the customer. Not part of the quote.', [away, each]);
}
