import type { Part, Sublet } from '../../estimate/index.js';
import type { PriceAgain, SideName } from './again.js';
import type { Cause } from './causes.js';
import type { Drafts } from './drafts.js';
import type { Pieces, Versions } from './option-sides.js';
import { titleOf, topOf, type Thing } from './things.js';

/** Finds why a line that both versions have costs something else: its own words, or what the shop makes of them. */
export class MovedCauses {
  constructor(
    private readonly versions: Versions,
    private readonly drafts: Drafts,
    private readonly again: PriceAgain,
  ) {}

  own(thing: Thing): Cause {
    return this.drafts.ofThing(thing) ?? (this.roundsOtherwise() ? { sort: 'rounding', title: 'Rounding', option: undefined } : { sort: 'other', title: titleOf(thing), option: undefined });
  }

  /** The rates that moved; where another one is the usual now, that follows from the shop as a whole. */
  rates(pieces: Pieces): readonly Cause[] {
    const moved = this.moved(this.again.rates(pieces));
    return moved.length > 0 ? moved : [{ sort: 'rate', title: 'Rate of the work', option: undefined }];
  }

  bands(goods: { readonly [side in SideName]: Part | Sublet }, on: 'parts' | 'sublets'): readonly Cause[] {
    const moved = this.moved(this.again.bands(goods, on));
    return moved.length > 0 ? moved : [{ sort: 'rounding', title: 'Rounding', option: undefined }];
  }

  /** The rules of the shop for tax on cores that moved. */
  policies(): readonly Cause[] {
    return this.moved((['before', 'after'] as const).flatMap((side) => [...this.versions[side].comparison.estimate.shop.coreTax.values()].flatMap(({ record }) => this.versions[side].things.of(record) ?? [])));
  }

  /** Whether a line that says the same may have another price all the same. */
  shopMoved(): boolean {
    return this.drafts.all.some(({ before, after }) => topOf((after ?? before) as Thing).kind === 'shop');
  }

  private moved(things: readonly Thing[]): readonly Cause[] {
    return [...new Set(things.flatMap((thing) => this.drafts.ofThing(thing) ?? []))];
  }

  /** Only what counts in the same currency is compared at all. */
  private roundsOtherwise(): boolean {
    const { before, after } = this.versions;
    return before.comparison.estimate.shop.rounding !== after.comparison.estimate.shop.rounding;
  }
}
