import type { Digits, IsoDate, Quote, QuoteLine, QuoteWait } from './types.js';

/** Figures of a quote as its readers write them. */
export interface Figures {
  readonly money: (amount: Digits) => string;
  readonly hours: (hours: Digits) => string;
  readonly number: (value: Digits) => string;
  readonly percent: (value: Digits) => string;
  readonly day: (date: IsoDate) => string;
  readonly weekday: (date: IsoDate) => string;
  /** “12 months”. */
  readonly wait: (wait: QuoteWait) => string;
  /** “2 ×” or “11 L”. */
  readonly quantity: (quantity: NonNullable<QuoteLine['quantity']>) => string;
  /** “6 working days”. */
  readonly workingDays: (days: Digits) => string;
}

/**
 * Numbers, money and dates by the shop's locale, through the platform's Intl, which is given exact decimals and dates
 * without a zone. The same on every machine that has the same edition of the Unicode locale data.
 */
export function figuresOf({ locale, currency: { code, digits } }: Pick<Quote, 'locale' | 'currency'>): Figures {
  const decimals = { minimumFractionDigits: digits, maximumFractionDigits: digits };
  const money = new Intl.NumberFormat(locale, code === '' ? decimals : { style: 'currency', currency: code, ...decimals });
  // An hourly rate may be finer than the smallest coin; it is told as it is.
  const fineMoney = new Intl.NumberFormat(locale, { ...(code === '' ? {} : { style: 'currency' as const, currency: code }), minimumFractionDigits: digits, maximumFractionDigits: 6 });
  const hours = new Intl.NumberFormat(locale, { minimumFractionDigits: 1, maximumFractionDigits: 2 });
  const number = new Intl.NumberFormat(locale, { maximumFractionDigits: 6 });
  const percent = new Intl.NumberFormat(locale, { style: 'unit', unit: 'percent', maximumFractionDigits: 6 });
  const day = new Intl.DateTimeFormat(locale, { timeZone: 'UTC', year: 'numeric', month: 'long', day: 'numeric' });
  const weekday = new Intl.DateTimeFormat(locale, { timeZone: 'UTC', weekday: 'long', year: 'numeric', month: 'long', day: 'numeric' });
  const numberOf = (value: Digits) => said(number, value);
  return {
    money: (amount) => said(decimalsOf(amount) > digits ? fineMoney : money, amount),
    hours: (value) => said(hours, value),
    number: numberOf,
    percent: (value) => said(percent, value),
    day: (date) => withoutMarks(day.format(atMidnight(date))),
    weekday: (date) => withoutMarks(weekday.format(atMidnight(date))),
    wait: ({ value, unit }) => `${numberOf(value)} ${counted(value, { d: 'day', wk: 'week', mo: 'month' }[unit])}`,
    quantity: ({ value, unit }) => (unit === undefined ? `${numberOf(value)} ×` : `${numberOf(value)} ${unit}`),
    workingDays: (days) => `${numberOf(days)} ${counted(days, 'working day')}`,
  };
}

/** Intl takes decimal digits as text and rounds them itself, half away from zero; the type doesn't know digits as such. */
function said(format: Intl.NumberFormat, digits: Digits): string {
  return withoutMarks(format.format(digits as `${number}`));
}

/** Marks of direction that Intl puts in: each form of a quote sets figures apart itself. */
function withoutMarks(text: string): string {
  return text.replace(/[\u061c\u200e\u200f\u2066-\u2069]/g, '');
}

function atMidnight(date: IsoDate): number {
  return Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10)));
}

function decimalsOf(digits: Digits): number {
  return (digits.split('.')[1] ?? '').length;
}

function counted(value: Digits, word: string): string {
  return value === '1' ? word : `${word}s`;
}
