import type { Span } from '../language/index.js';
import { hundred, hundredth, Tally, times as multiplied, zero, type Amount, Decimal } from '../vocabulary/index.js';
import type { Money } from './money.js';

/** What a figure counts. Money is in the shop's currency, rounded where its step says so. */
export type FigureUnit = 'money' | 'hours' | 'minutes' | 'percent' | 'number' | 'days';

/** How a figure was made from the figures in `from`. Anyone can work it out again from the step alone; a test does. */
export type Step =
  | { readonly kind: 'given' }
  /** A reading of the calendar or the like, in words. */
  | { readonly kind: 'found'; readonly how: string }
  /** All of `from` multiplied, divided by `per`; on the smallest coin where it is `rounded`. */
  | { readonly kind: 'product'; readonly per: number; readonly rounded: boolean }
  | { readonly kind: 'sum' }
  /** The first less all others. */
  | { readonly kind: 'difference' }
  /** The first less all others, but not below nothing. */
  | { readonly kind: 'remainder' }
  /** The first, taken the second's percentage of, on the smallest coin. */
  | { readonly kind: 'percentage' }
  /** The first, raised by the second's percentage; not rounded. */
  | { readonly kind: 'raised' }
  | { readonly kind: 'least' }
  | { readonly kind: 'greatest' }
  /** `from` is some amounts, then as many figures beside them: the one beside the least amount, and of several the least. */
  | { readonly kind: 'beside-least' };

/** A step that works a figure out from others. */
export type WorkedStep = Exclude<Step, { readonly kind: 'given' | 'found' }>;

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
  /** True where low and high may differ from the likely one. */
  readonly ranged: boolean;
}

export type Points = Pick<Figure, 'low' | 'likely' | 'high'>;

const GIVEN: Step = { kind: 'given' };
const SUM: WorkedStep = { kind: 'sum' };
const PRODUCT: WorkedStep = { kind: 'product', per: 1, rounded: true };
const PERCENTAGE: WorkedStep = { kind: 'percentage' };
const RAISED: WorkedStep = { kind: 'raised' };
const NOTHING: readonly Figure[] = [];

/** A figure as it stands in the text. */
export function given(label: string, unit: FigureUnit, amount: Amount): Figure {
  return { label, unit, low: amount.low, likely: amount.likely, high: amount.high, step: GIVEN, from: NOTHING, at: amount.at, ranged: amount.low !== amount.likely || amount.high !== amount.likely };
}

export function constant(label: string, unit: FigureUnit, value: Decimal): Figure {
  return { label, unit, low: value, likely: value, high: value, step: GIVEN, from: NOTHING, at: undefined, ranged: false };
}

export function found(label: string, unit: FigureUnit, value: Decimal, how: string, from: readonly Figure[] = []): Figure {
  return { label, unit, low: value, likely: value, high: value, step: { kind: 'found', how }, from, at: undefined, ranged: false };
}

export function sum(label: string, unit: FigureUnit, from: readonly Figure[], at?: Span): Figure {
  return new Worked(label, unit, SUM, from, undefined, at);
}

export function difference(label: string, unit: FigureUnit, from: readonly [Figure, ...Figure[]]): Figure {
  return new Worked(label, unit, { kind: 'difference' }, from);
}

/**
 * What is left of the first. Its low is worked from the lows, and its high from the highs, like every other step:
 * the range says what happens when every figure comes in low, or every one high.
 */
export function remainder(label: string, unit: FigureUnit, from: readonly [Figure, ...Figure[]]): Figure {
  return new Worked(label, unit, { kind: 'remainder' }, from);
}

/** Money for hours or pieces; rounded once, on the exact product. */
export function product(label: string, from: readonly Figure[], money: Money, at: Span | undefined, per = 1): Figure {
  return new Worked(label, 'money', per === 1 ? PRODUCT : { kind: 'product', per, rounded: true }, from, money, at);
}

/** All multiplied, not rounded. */
export function times(label: string, unit: FigureUnit, from: readonly Figure[]): Figure {
  return new Worked(label, unit, { kind: 'product', per: 1, rounded: false }, from);
}

export function hoursProduct(label: string, from: readonly Figure[], per = 1): Figure {
  return new Worked(label, 'hours', { kind: 'product', per, rounded: false }, from);
}

export function percentage(label: string, base: Figure, percent: Figure, money: Money, at: Span | undefined): Figure {
  return new Worked(label, 'money', PERCENTAGE, [base, percent], money, at);
}

/** A cost with its markup; not rounded, since the line is. */
export function raised(label: string, base: Figure, percent: Figure): Figure {
  return new Worked(label, 'money', RAISED, [base, percent]);
}

export function least(label: string, from: readonly [Figure, ...Figure[]]): Figure {
  return new Worked(label, from[0].unit, { kind: 'least' }, from);
}

export function greatest(label: string, from: readonly [Figure, ...Figure[]]): Figure {
  return new Worked(label, from[0].unit, { kind: 'greatest' }, from);
}

/** The hours of the way that costs least: amounts and hours in the same order. */
export function besideLeast(label: string, amounts: readonly Figure[], beside: readonly [Figure, ...Figure[]]): Figure {
  return new Worked(label, beside[0].unit, { kind: 'beside-least' }, [...amounts, ...beside]);
}

/**
 * A figure worked out from others by its step. The likely point is worked at once; low and high when somebody asks,
 * since most plans that are tried are never shown.
 */
class Worked implements Figure {
  readonly likely: Decimal;
  readonly ranged: boolean;
  #low: Decimal | undefined;
  #high: Decimal | undefined;

  constructor(
    readonly label: string,
    readonly unit: FigureUnit,
    readonly step: WorkedStep,
    readonly from: readonly Figure[],
    /** What it is rounded to; undefined where its step doesn't round. */
    private readonly money: Money | undefined = undefined,
    readonly at: Span | undefined = undefined,
  ) {
    this.likely = worked(step, from, 'likely', money);
    this.ranged = from.some((figure) => figure.ranged);
  }

  get low(): Decimal {
    return (this.#low ??= this.ranged ? worked(this.step, this.from, 'low', this.money) : this.likely);
  }

  get high(): Decimal {
    return (this.#high ??= this.ranged ? worked(this.step, this.from, 'high', this.money) : this.likely);
  }
}

/** Works one point of a step from the same point of the figures below it. */
function worked(step: WorkedStep, from: readonly Figure[], point: keyof Points, money: Money | undefined): Decimal {
  const exact = workedExactly(step, from, point);
  return money === undefined ? exact : money.round(exact);
}

function workedExactly(step: WorkedStep, from: readonly Figure[], point: keyof Points): Decimal {
  const first = from[0]?.[point] ?? zero;
  const second = from[1]?.[point] ?? zero;
  switch (step.kind) {
    case 'sum': return added(from, 0, point);
    case 'difference': return first.minus(added(from, 1, point));
    case 'remainder': return Decimal.max(zero, first.minus(added(from, 1, point)));
    case 'least': return from.reduce((small, figure) => (figure[point].lt(small) ? figure[point] : small), first);
    case 'greatest': return from.reduce((great, figure) => (figure[point].gt(great) ? figure[point] : great), first);
    case 'beside-least': return besideTheLeast(from, point);
    case 'percentage': return multiplied(multiplied(first, second), hundredth);
    case 'raised': return multiplied(multiplied(first, hundred.plus(second)), hundredth);
    case 'product': {
      let value = first;
      for (let i = 1; i < from.length; i++) value = multiplied(value, (from[i] as Figure)[point]);
      return step.per === 1 ? value : value.div(step.per);
    }
  }
}

function besideTheLeast(from: readonly Figure[], point: keyof Points): Decimal {
  const half = from.length / 2;
  let best = 0;
  for (let i = 1; i < half; i++) {
    const order = (from[i] as Figure)[point].comparedTo((from[best] as Figure)[point]) || (from[half + i] as Figure)[point].comparedTo((from[half + best] as Figure)[point]);
    if (order < 0) best = i;
  }
  return (from[half + best] as Figure)[point];
}

function added(from: readonly Figure[], start: number, point: keyof Points): Decimal {
  if (from.length <= start) return zero;
  const tally = new Tally();
  for (let i = start; i < from.length; i++) tally.add((from[i] as Figure)[point]);
  return tally.total();
}
