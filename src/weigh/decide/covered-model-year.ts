import { readVin } from '../../estimate/index.js';

/** Position 10, in the order of the years from 1980 on, and again from 2010 on. I, O, Q, U, Z and 0 never stand there. */
const YEAR_CODES = 'ABCDEFGHJKLMNPRSTVWXY123456789';

/**
 * The model year that a vehicle identification number states: 49 CFR 565.15, position 10 by its table of year codes,
 * and position 7, which is a letter in 2010–2039 and a digit in 1980–2009 for passenger cars, and for trucks and
 * multipurpose vehicles of up to 4536 kg (10 000 lb). The table is from memory of the regulation, recomputed from its
 * order (no I, O, Q, U, Z, 0; thirty codes, thirty years).
 *
 * Undefined where it can't be told: where the number has not the shape of one, its check digit does not hold (a slip,
 * or a number made for a region that has no check digit and need not follow this table), or position 10 is no code.
 * Heavier vehicles need not follow position 7, and one number in eleven from elsewhere holds by chance: a model year
 * read here is what the number says, and the vehicle's papers go before it.
 */
export function modelYearOf(vin: string): number | undefined {
  if (!readVin(vin).checkDigitHolds) return undefined;
  const code = YEAR_CODES.indexOf(vin.charAt(9));
  if (code < 0) return undefined;
  return (/\d/.test(vin.charAt(6)) ? 1980 : 2010) + code;
}
