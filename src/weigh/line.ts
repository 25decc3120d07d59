import type { Span } from '../language/index.js';
import type { Condition } from '../estimate/index.js';
import type { Record } from '../vocabulary/index.js';
import type { Figure } from './figure.js';

/** What a line is sold as; decides tax and where it is added up. */
export type LineKind = 'labour' | 'part' | 'sublet' | 'fee' | 'core';

/** One line of an option as it would stand on the quote. Its amount is rounded: lines add up to totals. */
export interface Line {
  readonly kind: LineKind;
  /** Whether it is paid for getting in, and not for the work itself. */
  readonly share: 'work' | 'access';
  readonly title: string;
  readonly name: string | undefined;
  /** What was written: where a click on it leads. */
  readonly at: Span;
  readonly record: Record;
  readonly amount: Figure;
  /** Hours of work, where it is labour. */
  readonly hours: Figure | undefined;
  /** How many and how much each, where that is not one. */
  readonly quantity: Figure | undefined;
  readonly condition: Condition | undefined;
  /** The ways in that the hours take, where there are several. */
  readonly with: readonly string[];
}
