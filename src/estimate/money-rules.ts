import type { Rule } from '../language/index.js';
import { clip } from '../vocabulary/index.js';

const shop = 'steelyard 1\nshop "S"\n  currency USD\n  rate bench 100.00\n';

export const unknownCurrency: Rule<{ readonly code: string }> = {
  code: 'unknown-currency', family: 'money', severity: 'error', title: 'A currency that is not in ISO 4217',
  message: ({ code }) => ({ what: `${clip(code)} is not a currency code of ISO 4217.`, why: 'The code says how many decimals an amount has; two are used until it is known.', instead: 'Write three capital letters, such as USD, EUR, GBP or JPY.' }),
  example: 'steelyard 1\nshop "S"\n  currency «DOLLARS»\n',
};

export const otherCurrency: Rule<{ readonly code: string; readonly shop: string }> = {
  code: 'other-currency', family: 'money', severity: 'error', title: 'An amount in another currency',
  message: ({ code, shop: own }) => ({ what: `This amount is in ${clip(code)}, but the shop works in ${own === '' ? 'none that is named' : own}.`, why: 'Amounts of two currencies can’t be added.', instead: own === '' ? 'Name the currency in the shop file.' : `Write the amount in ${own}.` }),
  example: `${shop}part pump "Coolant pump" «64.30 EUR» new\n`,
};

export const thousandsPoint: Rule<{ readonly written: string; readonly thousands: string; readonly decimals: string }> = {
  code: 'thousands-point', family: 'shape', severity: 'error', title: 'A point that could mean thousands',
  message: ({ written, thousands, decimals }) => ({
    what: `“${clip(written)}” could be ${thousands} or ${decimals}.`,
    why: 'In many places a point before three digits divides thousands, and the two differ by a factor of a thousand. Until it is told which, no total with this figure can be relied on.',
    instead: `Write ${thousands} where thousands are meant, ${decimals} where decimals are; a fourth decimal, as in 1.1250, says that thousandths are meant.`,
  }),
  example: `${shop}part pump "Used engine" «1.250» used\n`,
};

export const noRate: Rule<undefined> = {
  code: 'no-rate', family: 'money', severity: 'error', title: 'Work without a rate',
  message: () => ({ what: 'There is no rate for this work.', why: 'Its hours are counted, but they have no price, so the totals are too low.', instead: 'Add a rate to the shop, such as rate mechanical 132.00, or bring in the shop file with use "shop.yard".' }),
  example: 'steelyard 1\nlabour pump "Replace the pump" «2 h»\n',
};

export const whichRate: Rule<{ readonly rates: readonly string[] }> = {
  code: 'which-rate', family: 'money', severity: 'error', title: 'Work that could have several rates',
  message: ({ rates }) => ({ what: `This work names no class, and the shop has several: ${rates.join(', ')}.`, why: 'Its hours have no price until one is chosen, so the totals are too low.', instead: `Write class ${rates[0] ?? ''} on the line, or usual behind the rate that is meant when nothing is said.` }),
  example: 'steelyard 1\nshop "S"\n  rate bench 100.00\n  rate electrical 120.00\nlabour pump "Replace the pump" «2 h»\n',
};

export const usualTwice: Rule<undefined> = {
  code: 'usual-twice', family: 'money', severity: 'error', title: 'Two usual rates',
  message: () => ({ what: 'Another rate is already marked usual.', why: 'Work that names no class takes the usual rate, so there can be only one; the first is used.', instead: 'Remove usual from one of them.' }),
  example: 'steelyard 1\nshop "S"\n  rate bench 100.00 usual\n  rate electrical 120.00 «usual»\n',
};

export const priceMissing: Rule<{ readonly kind: string; readonly example: string }> = {
  code: 'price-missing', family: 'money', severity: 'error', title: 'A line without its price',
  message: ({ kind, example }) => ({ what: `This ${kind} has no price.`, why: 'The totals of every option that has it are too low.', instead: `Write the price, or cost and what it costs the shop, as in: ${example}` }),
  example: 'steelyard 1\n«part pump "Coolant pump" new»\n',
};

export const priceAndCost: Rule<undefined> = {
  code: 'price-and-cost', family: 'money', severity: 'warning', title: 'A price and a cost',
  message: () => ({ what: 'This line gives a price and a cost.', why: 'The price is used as it stands; the markup table is not asked.', instead: 'Remove the price to let the shop’s markup make it, or keep both if the price is agreed.' }),
  example: `steelyard 1\nshop "S"\n  markup 40%\npart pump "Coolant pump" «64.30» cost 40.00 new\n`,
};

export const noMarkup: Rule<{ readonly what: string }> = {
  code: 'no-markup', family: 'money', severity: 'warning', title: 'A cost that no markup covers',
  message: ({ what }) => ({ what: `The shop has no markup for ${what} of this cost.`, why: 'It is charged at cost, so the shop earns nothing on it.', instead: `Add a line without to, such as markup 30%${what === 'outside work' ? ' on sublets' : ''}, or write the price instead of the cost.` }),
  example: 'steelyard 1\nshop "S"\n  markup 40% to 20.00\npart pump "Coolant pump" «cost 40.00» new\n'.replace('«cost 40.00»', 'cost «40.00»'),
};

export const markupTwice: Rule<undefined> = {
  code: 'markup-twice', family: 'money', severity: 'error', title: 'Two markups for one cost',
  message: () => ({ what: 'Another markup line ends at the same cost.', why: 'Only one can hold; the first is used.', instead: 'Remove one, or change where it ends.' }),
  example: 'steelyard 1\nshop "S"\n  markup 40% to 20.00\n  «markup 50% to 20.00»\n',
};

export const conditionMissing: Rule<undefined> = {
  code: 'condition-missing', family: 'money', severity: 'warning', title: 'A part without its condition',
  message: () => ({ what: 'This part does not say whether it is new.', why: 'The customer must be told what is used or rebuilt, and core charges are taxed by it.', instead: 'Write new, aftermarket, rebuilt, used or customer-supplied behind the price.' }),
  fix: (_, at) => ({ title: 'Write new behind the price', at: { ...at, start: at.end }, text: ' new' }),
  example: 'steelyard 1\n«part pump "Coolant pump" 64.30»\n',
};

export const feeUnclear: Rule<{ readonly lacks: 'amount' | 'of' | 'one' | 'count' }> = {
  code: 'fee-unclear', family: 'money', severity: 'error', title: 'A fee that can’t be worked out',
  message: ({ lacks }) => ({
    what: lacks === 'amount' ? 'This fee has neither an amount nor a percentage.' : lacks === 'of' ? 'This fee does not say what it is a percentage of.' : lacks === 'one' ? 'This fee has an amount and a percentage.' : 'A percentage is charged once, so it takes no count before it.',
    why: 'It is left out of the totals.',
    instead: 'Write an amount, as in 14.50 or 3 d at 25.00, or a percentage, as in 5% of labour cap 45.00.',
  }),
  example: `${shop}  «fee supplies "Shop supplies" 5%»\n`,
};

export const taxUnclear: Rule<undefined> = {
  code: 'tax-unclear', family: 'money', severity: 'error', title: 'A tax that can’t be worked out',
  message: () => ({ what: 'This tax lacks its rate or what it is charged on.', why: 'It is left out of the totals.', instead: 'Write it as in: tax sales "Sales tax" 7.25% on parts, fees.' }),
  example: 'steelyard 1\nshop "S"\n  «tax sales 7.25%»\n',
};

export const amountMissing: Rule<{ readonly what: string; readonly example: string }> = {
  code: 'amount-missing', family: 'money', severity: 'error', title: 'A line without its amount',
  message: ({ what, example }) => ({ what: `This line lacks ${what}.`, why: 'It is left out of the totals.', instead: `Write it as in: ${example}` }),
  example: `${shop}option used "Used engine"\n  «harvest "Alternator"»\n`,
};

export const unknownLocale: Rule<{ readonly tag: string }> = {
  code: 'unknown-locale', family: 'shape', severity: 'warning', title: 'Not a language tag',
  message: ({ tag }) => ({ what: `“${clip(tag)}” is not a language tag that is known here.`, why: 'It says how numbers and dates are written on a quote; en-US is used until it can be read.', instead: 'Write the two letters of the language and, behind a hyphen, those of the country (a tag of BCP 47), such as en-GB or de-DE.' }),
  example: 'steelyard 1\nshop "S"\n  rate bench 100.00\n  locale «german»\n',
};
