import type { Amount, Currency, partConditions } from '../vocabulary/index.js';
import type { Source } from './source.js';

export type CoreTaxPolicy = 'kept' | 'refunded' | 'none';
export type Rounding = 'half-up' | 'half-even' | 'half-down';
export type Taxable = 'parts' | 'labour' | 'sublets' | 'fees';
export type Condition = keyof typeof partConditions;

export interface Rate extends Source {
  readonly name: string;
  readonly title: string;
  readonly price: Amount;
  /** What the hour costs the shop. */
  readonly cost: Amount | undefined;
}

/** One line of the markup table; `upTo` undefined means everything dearer. */
export interface MarkupBand extends Source {
  readonly percent: Amount;
  readonly upTo: Amount | undefined;
}

export interface Tax extends Source {
  readonly name: string;
  readonly title: string;
  readonly percent: Amount;
  readonly on: ReadonlySet<Taxable>;
  readonly basis: 'item' | 'invoice';
}

export interface CoreTax extends Source {
  readonly policy: CoreTaxPolicy;
}

export interface Fee extends Source {
  readonly name: string | undefined;
  readonly title: string;
  readonly quantity: Amount | undefined;
  readonly price: Amount | undefined;
  readonly percent: Amount | undefined;
  readonly of: readonly ('labour' | 'parts' | 'sublets')[];
  readonly cap: Amount | undefined;
}

export interface Tool extends Source {
  readonly name: string;
  readonly title: string;
  readonly owned: boolean;
  readonly price: Amount | undefined;
  readonly arrives: Amount | undefined;
}

/** How far work may run over what was authorised; the limits hold for a percentage. */
export interface Overrun extends Source {
  readonly by: { readonly percent: Amount; readonly atLeast: Amount | undefined; readonly atMost: Amount | undefined } | { readonly fixed: Amount };
}

export interface Shop {
  readonly source: Source | undefined;
  readonly title: string;
  /** For the head of a quote. */
  readonly address: readonly string[];
  readonly phone: string | undefined;
  /** BCP 47. */
  readonly locale: string;
  readonly currency: Currency;
  readonly rounding: Rounding;
  readonly workday: Amount | undefined;
  readonly technicians: number;
  /** 0 is Sunday, as in ISO 8601 modulo 7. */
  readonly closedWeekdays: ReadonlySet<number>;
  readonly closedDates: ReadonlySet<string>;
  readonly rates: ReadonlyMap<string, Rate>;
  readonly usualRate: Rate | undefined;
  /** Rising by `upTo`, the open band last. */
  readonly markup: { readonly parts: readonly MarkupBand[]; readonly sublets: readonly MarkupBand[] };
  readonly taxes: readonly Tax[];
  readonly coreTax: ReadonlyMap<Condition, CoreTax>;
  readonly fees: readonly Fee[];
  readonly tools: readonly Tool[];
  readonly overrun: Overrun | undefined;
}
