import { Decimal as Library } from 'decimal.js';

/**
 * The one Decimal of the product. A written figure has at most 18 digits (12 before the point, 6 after), so that the
 * product of quantity, cost and markup has at most 57; 60 hold it without loss. Only minutes are divided, last.
 */
export const Decimal = Library.clone({ precision: 60, rounding: Library.ROUND_HALF_UP, toExpNeg: -40, toExpPos: 40 });
export type Decimal = Library;

export const zero = new Decimal(0);
export const one = new Decimal(1);
export const hundred = new Decimal(100);
