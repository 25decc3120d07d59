import type { Amount, Decimal } from '../vocabulary/index.js';

const MINUTES = 60;

/** The likely figure of a time of work, in hours. */
export function hoursIn({ likely, unit }: Pick<Amount, 'likely' | 'unit'>): Decimal {
  return unit?.word === 'min' ? likely.div(MINUTES) : likely;
}
