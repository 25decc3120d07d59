import { aboutText } from '../decision-words.js';
import { Decimal } from '../../vocabulary/index.js';
import { moneyText } from '../numbers.js';
import type { Money } from '../../weigh/index.js';

/** Where a value is drawn. */
export interface Scale {
  readonly low: number;
  readonly high: number;
  readonly at: (value: number) => number;
}

/** A straight scale from the least to the greatest value; all in the middle where they are one. */
export function scaleOf(low: number, high: number, left: number, right: number): Scale {
  const span = high - low;
  return { low, high, at: (value) => (span > 0 ? left + ((value - low) / span) * (right - left) : (left + right) / 2) };
}

/** Round values on a scale: 1, 2 or 5 with zeros, at most so many steps. */
export function ticksOf({ low, high }: Pick<Scale, 'low' | 'high'>, most: number): readonly number[] {
  const step = stepFor(high - low, most);
  if (step === undefined) return [];
  const ticks: number[] = [];
  for (let count = Math.ceil(low / step); count * step <= high && ticks.length <= most; count++) if (count * step >= low) ticks.push(count * step + 0);
  return ticks;
}

function stepFor(span: number, most: number): number | undefined {
  if (!(span > 0) || span === Infinity) return undefined;
  let unit = 1;
  while (unit * most < span) unit *= 10;
  while (unit * most >= span * 10) unit /= 10;
  return [unit / 5, unit / 2, unit].find((step) => step * most >= span);
}

/** A round amount on a scale: whole where its step is. */
export function tickText(value: number, money: Money): string {
  return Number.isInteger(value) ? aboutText(value, money) : moneyText(new Decimal(value), money);
}
