import type { Name } from '../vocabulary/index.js';
import { pick, type Lookup } from './lookup.js';
import type { Part, Sublet } from './work-types.js';

/** What a line brings along. */
interface Goods {
  readonly parts: readonly Part[];
  readonly sublets: readonly Sublet[];
}

const NO_GOODS: Goods = { parts: [], sublets: [] };

/** Names behind `uses` stand for parts first, then for outside work. */
export function usedGoods(uses: readonly Name[] | undefined, lookup: Lookup): Goods {
  if (uses === undefined) return NO_GOODS;
  if (lookup.scope.named('sublet').length === 0) return { parts: pick(uses, lookup.part), sublets: [] };
  const isSublet = ({ name }: Name) => lookup.scope.find('part', name) === undefined && lookup.scope.find('sublet', name) !== undefined;
  return { parts: pick(uses.filter((name) => !isSublet(name)), lookup.part), sublets: pick(uses.filter(isSublet), lookup.sublet) };
}
