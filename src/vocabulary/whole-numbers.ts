import { amountOf } from './amounts.js';
import type { Amount, ValueType } from './value.js';
import * as rules from './value-rules.js';

interface Bounds {
  readonly label: string;
  readonly says: string;
  readonly example: string;
  readonly least: number;
  readonly most: number;
}

/** A number that counts or names something, so that it is one figure, whole, and within bounds. */
function wholeNumber({ label, says, example, least, most }: Bounds): ValueType<Amount> {
  const figure = amountOf({ label, says, examples: [example], measures: ['plain'] });
  return {
    ...figure,
    read(cursor) {
      const amount = figure.read(cursor);
      if (amount === undefined) return undefined;
      const { low, likely, high } = amount;
      if (low.eq(high) && likely.isInteger() && likely.gte(least) && likely.lte(most)) return amount;
      return cursor.report(rules.notWhole, amount.at, { wanted: label, least, most, example });
    },
  };
}

export const headcount = wholeNumber({ label: 'a number of people', says: 'How many people: a whole number.', example: '2', least: 1, most: 50 });
/** The oldest vehicle that still comes to a shop has one, and a figure of another length is a slip. */
const oneYear = wholeNumber({ label: 'a year', says: 'A year in four digits.', example: '2013', least: 1885, most: 2200 });

export const year: ValueType<Amount> = {
  ...oneYear,
  read(cursor) {
    const token = cursor.peek();
    // Years without spaces between them look like thousands.
    if (token !== undefined && /^\d{4}(,\d{4})+$/.test(token.text)) return cursor.report(rules.gluedComma, cursor.span(token), { apart: token.text.split(',').join(', ') });
    return oneYear.read(cursor);
  },
};
