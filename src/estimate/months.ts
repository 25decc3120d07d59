import { type Amount, type Decimal } from '../vocabulary/index.js';

/** Days of a month on average: a year of the Gregorian calendar has 365.2425. */
const DAYS_PER_MONTH = 365.2425 / 12;

/** A time by the calendar in months; weeks and days by the average month. */
export function monthsIn({ likely, unit }: Amount): Decimal {
  if (unit?.word === 'mo') return likely;
  return likely.times(unit?.word === 'wk' ? 7 : 1).div(DAYS_PER_MONTH);
}
