import type { Span, Token } from '../language/index.js';
import type { Cursor } from './cursor.js';
import type { Decimal } from './decimal.js';
import type { Dimension, Unit } from './units.js';
import type { Zod, ZodType } from './zod.js';

/** A figure as written: one number, or low / likely / high. Unit factors are not applied: 45 min stays 45 min. */
export interface Amount {
  readonly low: Decimal;
  readonly likely: Decimal;
  readonly high: Decimal;
  readonly unit: Unit | undefined;
  readonly percent: boolean;
  readonly currency: string | undefined;
  readonly at: Span;
}

export interface Text {
  readonly text: string;
  readonly at: Span;
}

/** A name as written, to be resolved by the estimate room. */
export interface Name {
  readonly name: string;
  readonly at: Span;
}

export interface Choice<W extends string = string> {
  readonly word: W;
  readonly at: Span;
}

export interface DateValue {
  /** YYYY-MM-DD, or YYYY-MM where a month is enough. */
  readonly iso: string;
  readonly at: Span;
}

/** A row of readings, one for each cylinder. */
export interface Readings {
  readonly values: readonly Decimal[];
  readonly unit: Unit | undefined;
  readonly at: Span;
}

/**
 * One type of value that a slot can take: how it is read, how it is described, and its form as data. Reading
 * reports exactly one problem where it returns undefined.
 */
export interface ValueType<T> {
  readonly label: string;
  readonly says: string;
  readonly examples: readonly string[];
  readonly schema: (z: Zod) => ZodType;
  readonly read: (cursor: Cursor) => T | undefined;
  readonly toJson: (value: T) => unknown;
  /** Whether a value of this type can start at this token, where no word leads to it. */
  readonly starts: (token: Token) => boolean;
  /** Set where the value is a figure: what it may measure. */
  readonly measures?: readonly Dimension[];
  /** Set where the value is a row of figures. */
  readonly row?: true;
  /** Set where the value is one day of the calendar. */
  readonly day?: true;
  /** Set where the value is one word of a closed list. */
  readonly words?: Readonly<Record<string, string>>;
  /** Set where the value is several of another, with commas. */
  readonly item?: ValueType<unknown>;
  /** What to write instead of words behind a value that say more of it than it can. */
  readonly alone?: string;
  /** Set where the value names records of these kinds. */
  readonly refersTo?: readonly string[];
  /** Names that are understood without a record, such as `in-car`. */
  readonly builtIn?: Readonly<Record<string, string>>;
}
