import type { Decimal } from '../../vocabulary/index.js';
import type { SideName } from './again.js';
import type { Cause } from './causes.js';
import { shared, type Share, type Workings } from './share.js';
import { split } from './split.js';

/** Who moved each tax: its own words, the shop's rules for tax on cores, or what it is charged on. */
export function* taxShares({ sides, drafts, moved, again }: Workings): Generator<readonly Share[]> {
  const { versions, option } = sides;
  const taxes = { before: versions.before.comparison.estimate.shop.taxes, after: versions.after.comparison.estimate.shop.taxes };
  const pairs = [
    ...taxes.after.map((tax) => ({ after: tax, before: taxes.before.find(({ record }) => record === sides.partnerOf(tax.record, 'after')?.record) })),
    ...taxes.before.filter((tax) => !taxes.after.some(({ record }) => record === sides.partnerOf(tax.record, 'before')?.record)).map((tax) => ({ before: tax, after: undefined })),
  ];
  const policies = moved.policies();
  for (const pair of pairs) {
    const tax = pair.after ?? pair.before;
    const thing = versions[pair.after === undefined ? 'before' : 'after'].things.of(tax.record);
    const own: Cause = (thing === undefined ? undefined : drafts.ofThing(thing)) ?? { sort: 'other', title: tax.title, option: undefined };
    const parts = split(3, ([of, policy, on]) => again.tax(pair[of as SideName], policy as SideName, option[on as SideName], on as SideName)) as readonly [Decimal, Decimal, Decimal];
    yield [[own, parts[0]], ...shared(policies, parts[1]), [{ sort: 'tax', title: tax.title, option: undefined }, parts[2]]];
  }
}
