import { parse } from '../../src/language/index.js';
import type { Sources } from '../../src/estimate/index.js';
import { CLOSED_SHOP } from '../../src/tools/bench/closed-estimates.js';

/** The generated shop's shared file, and nothing else. */
const shop = parse('/shop/shop.yard', CLOSED_SHOP);
export const sources: Sources = { treeOf: (uri) => (uri === '/shop/shop.yard' ? shop : 'missing'), resolvePath: (_from, path) => `/shop/${path}` };
export const URI = '/shop/job.yard';

export const BENCH = `steelyard 1
use "shop.yard"
access lifted "Engine raised"
  remove 1 h
  refit 1.5 h
access out "Engine lowered"
  includes lifted
  remove 6 h
  refit 90 min
labour pump "Coolant pump"
  takes 9 h
  takes 4 h with lifted
  takes 1 h with out
labour head "Rear head" 11 h with out
labour valves "Valves" 12 at 20 min
option repair "Repair it"
  do look, pump, head, valves
  labour "Dress it" 2 h
  chance "A bolt breaks" 10%
    labour "Drill it out" 1.5 h with out
option stop "Leave it"
  labour "Put it back" 1 h
`;
