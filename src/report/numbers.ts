import type { Decimal } from '../vocabulary/index.js';
import type { Figure, FigureUnit, Money } from '../weigh/index.js';

/** Money with all its decimals and thousands apart: 12,345.60. */
export function moneyText(value: Decimal, money: Money): string {
  return grouped(value.toFixed(money.currency.digits));
}

/** Hours with one decimal, or two where one would hide a quarter: 14.5, 0.75. Never used to calculate. */
export function hoursText(value: Decimal): string {
  const two = value.toFixed(2);
  return two.endsWith('0') ? two.slice(0, -1) : two;
}

export function valueText(value: Decimal, unit: FigureUnit, money: Money): string {
  switch (unit) {
    case 'money': {
      // A unit price may be finer than the smallest coin; it is shown as it is.
      const fine = value.decimalPlaces() > money.currency.digits ? value.toDecimalPlaces(6).toFixed() : value.toFixed(money.currency.digits);
      return grouped(fine);
    }
    case 'hours':
      return `${hoursText(value)} h`;
    case 'minutes':
      return `${value.toFixed()} min`;
    case 'percent':
      return `${value.toFixed()} %`;
    case 'days':
      return `${value.decimalPlaces() > 2 ? value.toFixed(2) : value.toFixed()} d`;
    case 'number':
      return value.toFixed();
  }
}

/** The likely value, and the range behind it where there is one. */
export function figureText(figure: Figure, money: Money): string {
  const likely = valueText(figure.likely, figure.unit, money);
  if (figure.low.eq(figure.likely) && figure.high.eq(figure.likely)) return likely;
  return `${likely} (${valueText(figure.low, figure.unit, money)} to ${valueText(figure.high, figure.unit, money)})`;
}

/** Decimal digits with commas between the thousands. */
export function grouped(fixed: string): string {
  const [whole = '', decimals] = fixed.split('.');
  const sign = whole.startsWith('-') ? '-' : '';
  const digits = whole.slice(sign.length);
  const head = digits.length % 3;
  const apart = digits.length < 4 ? whole : sign + [...(head === 0 ? [] : [digits.slice(0, head)]), ...(digits.slice(head).match(/.{3}/g) ?? [])].join(',');
  return decimals === undefined ? apart : `${apart}.${decimals}`;
}
