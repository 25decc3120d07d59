import type { Rounding } from '../estimate/index.js';
import type { Currency } from '../vocabulary/index.js';
import { Decimal, roundedTo } from '../vocabulary/index.js';
import { keeper } from './keep.js';

/** How money is rounded here. Each amount is rounded once, on the exact product; sums of rounded amounts are exact. */
export interface Money {
  readonly currency: Currency;
  readonly round: (exact: Decimal) => Decimal;
}

const modes = {
  'half-up': Decimal.ROUND_HALF_UP,
  'half-even': Decimal.ROUND_HALF_EVEN,
  'half-down': Decimal.ROUND_HALF_DOWN,
} as const;

const keep = keeper<Currency, Money>();

/** The money of a currency; the same object for the same currency and rounding, so that prices can be kept by it. */
export function moneyOf(currency: Currency, rounding: Rounding): Money {
  return keep(currency, [rounding], () => ({ currency, round: (exact) => roundedTo(exact, currency.digits, modes[rounding]) }));
}
