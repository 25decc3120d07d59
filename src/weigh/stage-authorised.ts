import { authorisedIn } from './authorised.js';
import { remainder, sum, type Figure } from './figure.js';
import { keeper } from './keep.js';
import type { Comparison, Weighed } from './weigh.js';

/** Of an option's total, what is authorised already for the stages in it, and what is left. */
export interface AfterStages {
  readonly authorised: Figure;
  readonly left: Figure;
}

const keepAfter = keeper<Comparison, ReadonlyMap<Weighed, AfterStages>>();

/**
 * For every option that has no authorisation of its own: one of those is for the whole total and takes the place of the
 * stages'. Empty where no stage is authorised. No total is changed by it.
 */
export function afterStages(comparison: Comparison): ReadonlyMap<Weighed, AfterStages> {
  return keepAfter(comparison, [], () => {
    const agreed = authorisedIn(comparison);
    const isStage = (name: string) => comparison.stages.some(({ stage }) => stage.name === name);
    const amounts = agreed.filter(({ of }) => isStage(of.name)).map(({ amount }) => amount);
    if (amounts.length === 0) return new Map();
    const authorised = sum('Authorised for stages', 'money', amounts);
    const open = comparison.options.filter(({ option }) => !agreed.some(({ of }) => of === option));
    return new Map(open.map((weighed) => [weighed, { authorised, left: remainder('Left to authorise', 'money', [weighed.totals.total, authorised]) }]));
  });
}
