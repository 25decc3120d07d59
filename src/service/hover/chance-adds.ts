import { aboutText, shareText } from '../../report/index.js';
import type { Record } from '../../vocabulary/index.js';
import { canHappenIn, expectedOf, modelOf, type Comparison, type Weighed } from '../../weigh/index.js';

/** How often a chance happens in each option that has it, what it then adds, and what that comes to on average. */
export function chanceAdds(record: Record, comparison: Comparison): string[] {
  const by = new Map<string, string[]>();
  for (const weighed of comparison.options) {
    const says = addsIn(weighed, record, comparison);
    if (says !== undefined) by.set(says, [...(by.get(says) ?? []), weighed.option.name]);
  }
  return [...by].map(([says, options]) => `In ${options.join(', ')}: ${says}.`);
}

function addsIn(weighed: Weighed, record: Record, { estimate, money }: Comparison): string | undefined {
  const model = modelOf(weighed, estimate, money);
  const place = model.chances.findIndex(({ chance }) => chance.record === record);
  const found = model.chances[place];
  if (found === undefined) return undefined;
  // It may hang on others: what is asked is how often it can happen, and what it changes then.
  const can = canHappenIn(model, place);
  const averageAt = (likelihood: number) => expectedOf({ ...model, chances: model.chances.with(place, { ...found, likelihood }) }, estimate, money)(new Map());
  const adds = can === 0 ? 0 : (averageAt(1) - averageAt(0)) / can;
  const likelihood = can * found.likelihood;
  return `happens in ${shareText(likelihood)} of cases and then adds about ${aboutText(adds, money)}; on average that is ${aboutText(likelihood * adds, money)}, in no quote`;
}
