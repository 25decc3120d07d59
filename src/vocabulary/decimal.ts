import { Decimal as Library } from 'decimal.js';

/**
 * The one Decimal of the product. 40 digits hold every product and sum of figures as long as the written form
 * allows (15 digits before the point, 6 after) without loss; only divisions round, and none feeds quoted money.
 */
export const Decimal = Library.clone({ precision: 40, rounding: Library.ROUND_HALF_UP, toExpNeg: -40, toExpPos: 40 });
export type Decimal = Library;

export const zero = new Decimal(0);
export const one = new Decimal(1);
export const hundred = new Decimal(100);
