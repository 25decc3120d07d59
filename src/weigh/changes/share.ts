import type { Decimal } from '../../vocabulary/index.js';
import type { PriceAgain } from './again.js';
import type { Cause, Causes } from './causes.js';
import type { Drafts } from './drafts.js';
import type { MovedCauses } from './moved-causes.js';
import type { OptionSides } from './option-sides.js';

/** A part of a difference, and what moved it. */
export type Share = readonly [Cause, Decimal];

/** What the shares of an option that both versions have are worked out from. */
export interface Workings {
  readonly sides: OptionSides;
  readonly drafts: Drafts;
  readonly causes: Causes;
  readonly moved: MovedCauses;
  readonly again: PriceAgain;
}

/** In equal parts: nothing tells the causes apart. */
export function shared(causes: readonly Cause[], amount: Decimal): readonly Share[] {
  return causes.map((cause) => [cause, amount.div(causes.length)]);
}
