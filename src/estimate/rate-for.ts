import { problem, type Span } from '../language/index.js';
import type { Name } from '../vocabulary/index.js';
import type { Telling } from './lookup.js';
import * as moneyRules from './money-rules.js';
import type { Rate } from './shop-types.js';

/** The rate of a class of work; where none can be told, says so at the hours. */
export function rateFor(className: Name | undefined, at: Span, { shop, problems }: Telling): Rate | undefined {
  if (className !== undefined) return shop.rates.get(className.name);
  if (shop.usualRate !== undefined) return shop.usualRate;
  if (shop.rates.size === 0) problems.push(problem(moneyRules.noRate, at, undefined));
  else problems.push(problem(moneyRules.whichRate, at, { rates: [...shop.rates.keys()] }));
  return undefined;
}
