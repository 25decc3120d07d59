import type { Span } from '../language/index.js';
import type { Figure, Money } from '../weigh/index.js';
import type { WeighReport } from './weigh-schema.js';

/** Where a span is; undefined where its file is not at hand. */
export type PlaceOf = (span: Span) => { readonly file: string; readonly line: number; readonly column: number } | undefined;

/** What every part of the report is written with. */
export interface JsonWriter {
  readonly points: (figure: Figure) => JsonFigure;
  /** A sampled or averaged amount, rounded to the smallest coin so that it is the same on every machine. */
  readonly amount: (value: number) => string;
  readonly at: (span: Span) => { readonly at?: NonNullable<ReturnType<PlaceOf>> };
}

type JsonFigure = WeighReport['options'][number]['figures'][string];

export function writer({ currency: { digits } }: Money, placeOf: PlaceOf): JsonWriter {
  return {
    points: (figure) => figureJson(figure, digits),
    amount: (value) => fixed(value, digits),
    at: (span) => {
      const at = placeOf(span);
      return at === undefined ? {} : { at };
    },
  };
}

/** A binary number as decimal digits, rounded; never a zero below nothing. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return /^-0(\.0+)?$/.test(text) ? text.slice(1) : text;
}

/** Money with all its decimals; hours that don't end (10 min) to the sixth decimal. */
function figureJson(one: Figure, moneyDigits: number): JsonFigure {
  const text = (value: Figure['likely']) => (one.unit === 'money' && value.decimalPlaces() <= moneyDigits ? value.toFixed(moneyDigits) : value.toDecimalPlaces(6).toFixed());
  return { low: text(one.low), likely: text(one.likely), high: text(one.high), unit: one.unit };
}
