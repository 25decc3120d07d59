import type { Points, Weighed } from '../../weigh/index.js';
import { zero, type Decimal } from '../../vocabulary/index.js';
import type { Fill } from './patterns.js';

/** What a cost in all is made of, in the order in which it is drawn. */
export const costParts = {
  penalty: { name: 'Access penalty', fill: { look: 'penalty', pattern: 'rising' } },
  access: { name: 'Getting in', fill: { look: 'access', pattern: 'fine' } },
  labour: { name: 'Labour', fill: { look: 'labour', pattern: undefined } },
  parts: { name: 'Parts', fill: { look: 'parts', pattern: 'dots' } },
  outside: { name: 'Outside work', fill: { look: 'outside', pattern: 'upright' } },
  fees: { name: 'Fees', fill: { look: 'fees', pattern: 'level' } },
  cores: { name: 'Core charges, net', fill: { look: 'cores', pattern: 'grid' } },
  tax: { name: 'Tax, net', fill: { look: 'tax', pattern: undefined } },
  'given-up': { name: 'Worth given up', fill: { look: 'given-up', pattern: 'falling' } },
} as const satisfies Readonly<Record<string, { readonly name: string; readonly fill: Fill }>>;

export type CostPart = keyof typeof costParts;

export const partNames = Object.keys(costParts) as readonly CostPart[];

/** One option as a bar. Its parts, less what comes back beyond them, add up to the cost in all. */
export interface CostBar {
  readonly title: string;
  /** A word beside the title, such as `cheapest`. */
  readonly mark: string | undefined;
  /** None is below nothing. */
  readonly parts: Readonly<Record<CostPart, Decimal>>;
  /** What comes back beyond core charges and their tax, such as pieces that are kept. */
  readonly comesBack: Decimal;
  readonly inAll: Points;
}

/**
 * The parts of an option's cost in all. The access penalty is one of them, so each of the others is what the same work
 * takes on an engine stand: with the engine in its place a job may take longer, and that is no part of its labour.
 */
export function costBarOf({ option, planned, totals, penalty, returns, givenUp, inAll }: Weighed, mark?: string): CostBar {
  // A stand that is dearer than the vehicle would leave less than nothing for the penalty.
  const apart = !penalty.money.likely.isNegative();
  const work = apart ? planned.stand.totals : totals;
  const cores = less(work.cores.likely, returns.refunds.likely);
  const tax = less(work.tax.likely, returns.taxBack.likely);
  return {
    title: option.title,
    mark,
    parts: {
      penalty: apart ? penalty.money.likely : zero,
      access: work.access.likely, labour: work.labour.likely, parts: work.parts.likely,
      outside: work.sublets.likely, fees: work.fees.likely, cores: cores.left, tax: tax.left,
      'given-up': givenUp?.likely ?? zero,
    },
    comesBack: returns.salvage.likely.plus(cores.over).plus(tax.over),
    inAll: { low: inAll.low, likely: inAll.likely, high: inAll.high },
  };
}

/** What is left of an amount after something comes back, and what comes back over it. */
function less(amount: Decimal, back: Decimal): { readonly left: Decimal; readonly over: Decimal } {
  return back.gt(amount) ? { left: zero, over: back.minus(amount) } : { left: amount.minus(back), over: zero };
}
