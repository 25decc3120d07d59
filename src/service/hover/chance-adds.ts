import type { Span } from '../../language/index.js';
import { aboutText, shareText } from '../../report/index.js';
import type { Record } from '../../vocabulary/index.js';
import { expectedOf, modelOf, type Comparison, type Weighed } from '../../weigh/index.js';

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
  const found = model.chances.find(({ chance }) => chance.record === record);
  if (found === undefined) return undefined;
  // With those above it happening, since without them it can't.
  const above = new Map<Span, boolean>();
  let likelihood = found.likelihood;
  for (let parent = found.parent; parent !== undefined; parent = model.chances[parent]?.parent) {
    const one = model.chances[parent] as (typeof model.chances)[number];
    above.set(one.chance.at, true);
    likelihood *= one.likelihood;
  }
  const average = expectedOf(model, estimate, money);
  const given = (happens: boolean) => average(new Map([...above, [found.chance.at, happens]]));
  const adds = given(true) - given(false);
  return `happens in ${shareText(likelihood)} of cases and then adds about ${aboutText(adds, money)}; on average that is ${aboutText(likelihood * adds, money)}, in no quote`;
}
