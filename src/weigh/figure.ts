import type { Span } from '../language/index.js';
import { hundred, zero, type Amount, Decimal } from '../vocabulary/index.js';
import type { Money } from './money.js';

/** What a figure counts. Money is in the shop's currency, rounded where its step says so. */
export type FigureUnit = 'money' | 'hours' | 'minutes' | 'percent' | 'number' | 'days';

/**
 * How a figure was made from the figures in `from`. Anyone can work it out again from the step alone; a test does.
 * `rounded` steps end on the smallest coin.
 */
export type Step =
  | { readonly kind: 'given' }
  /** A reading of the calendar or the like, in words. */
  | { readonly kind: 'found'; readonly how: string }
  /** All of `from` multiplied, divided by `per`. */
  | { readonly kind: 'product'; readonly per: number; readonly rounded: boolean }
  | { readonly kind: 'sum' }
  /** The first less all others. */
  | { readonly kind: 'difference' }
  /** The first less all others, but not below nothing. */
  | { readonly kind: 'remainder' }
  /** The first, taken the second's percentage of. */
  | { readonly kind: 'percentage'; readonly rounded: boolean }
  /** The first, raised by the second's percentage. */
  | { readonly kind: 'raised'; readonly rounded: boolean }
  | { readonly kind: 'least' };

/** A figure with its three points and how it came about, down to the lines that were written. */
export interface Figure {
  readonly label: string;
  readonly unit: FigureUnit;
  readonly low: Decimal;
  readonly likely: Decimal;
  readonly high: Decimal;
  readonly step: Step;
  readonly from: readonly Figure[];
  /** Where it was written; every figure of step `given` has one, unless it is a constant. */
  readonly at: Span | undefined;
}

export type Points = Pick<Figure, 'low' | 'likely' | 'high'>;

/** A figure as it stands in the text. */
export function given(label: string, unit: FigureUnit, amount: Amount): Figure {
  return { label, unit, low: amount.low, likely: amount.likely, high: amount.high, step: { kind: 'given' }, from: [], at: amount.at };
}

export function constant(label: string, unit: FigureUnit, value: Decimal): Figure {
  return { label, unit, low: value, likely: value, high: value, step: { kind: 'given' }, from: [], at: undefined };
}

export function found(label: string, unit: FigureUnit, value: Decimal, how: string, from: readonly Figure[] = []): Figure {
  return { label, unit, low: value, likely: value, high: value, step: { kind: 'found', how }, from, at: undefined };
}

export function sum(label: string, unit: FigureUnit, from: readonly Figure[], at?: Span): Figure {
  return make(label, unit, { kind: 'sum' }, from, at, (point) => from.reduce((total, figure) => total.plus(figure[point]), zero));
}

export function difference(label: string, unit: FigureUnit, from: readonly [Figure, ...Figure[]]): Figure {
  return make(label, unit, { kind: 'difference' }, from, undefined, (point) => from.slice(1).reduce((rest, figure) => rest.minus(figure[point]), from[0][point]));
}

/**
 * What is left of the first. Its low is worked from the lows, and its high from the highs, like every other step:
 * the range says what happens when every figure comes in low, or every one high.
 */
export function remainder(label: string, unit: FigureUnit, from: readonly [Figure, ...Figure[]]): Figure {
  return make(label, unit, { kind: 'remainder' }, from, undefined, (point) => Decimal.max(zero, from.slice(1).reduce((rest, figure) => rest.minus(figure[point]), from[0][point])));
}

/** Money for hours or pieces; rounded once, on the exact product. */
export function product(label: string, from: readonly Figure[], money: Money, at: Span | undefined, per = 1): Figure {
  return make(label, 'money', { kind: 'product', per, rounded: true }, from, at, (point) => money.round(multiplied(from, point, per)));
}

export function hoursProduct(label: string, from: readonly Figure[], per = 1): Figure {
  return make(label, 'hours', { kind: 'product', per, rounded: false }, from, undefined, (point) => multiplied(from, point, per));
}

export function percentage(label: string, base: Figure, percent: Figure, money: Money, at: Span | undefined): Figure {
  return make(label, 'money', { kind: 'percentage', rounded: true }, [base, percent], at, (point) => money.round(base[point].times(percent[point]).div(hundred)));
}

/** A cost with its markup; not rounded, since the line is. */
export function raised(label: string, base: Figure, percent: Figure): Figure {
  return make(label, 'money', { kind: 'raised', rounded: false }, [base, percent], undefined, (point) => base[point].times(hundred.plus(percent[point])).div(hundred));
}

export function least(label: string, from: readonly [Figure, ...Figure[]]): Figure {
  return make(label, from[0].unit, { kind: 'least' }, from, undefined, (point) => from.reduce((small, figure) => (figure[point].lt(small) ? figure[point] : small), from[0][point]));
}

function multiplied(from: readonly Figure[], point: keyof Points, per: number): Decimal {
  const value = from.slice(1).reduce((total, figure) => total.times(figure[point]), (from[0] as Figure)[point]);
  return per === 1 ? value : value.div(per);
}

/** Works a step for the likely point, and for the others only where any figure has a range. */
function make(label: string, unit: FigureUnit, step: Step, from: readonly Figure[], at: Span | undefined, work: (point: keyof Points) => Decimal): Figure {
  const likely = work('likely');
  const ranged = from.some(hasRange);
  return { label, unit, low: ranged ? work('low') : likely, likely, high: ranged ? work('high') : likely, step, from, at };
}

export function hasRange(points: Points): boolean {
  return points.low !== points.likely || points.high !== points.likely;
}
