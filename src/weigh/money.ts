import type { Currency, Rounding } from '../estimate/index.js';
import { Decimal } from '../vocabulary/index.js';

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

export function moneyOf(currency: Currency, rounding: Rounding): Money {
  const mode = modes[rounding];
  return { currency, round: (exact) => exact.toDecimalPlaces(currency.digits, mode) };
}
