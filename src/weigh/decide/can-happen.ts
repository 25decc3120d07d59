import { canHappen, needsOf, statesOf } from '../chance/index.js';
import type { OptionModel } from './model.js';

/** How often one of an option's chances can happen, by its place: 1 where it hangs on nothing, else as often as one that it hangs on happens. */
export function canHappenIn({ chances }: OptionModel, place: number): number {
  const needs = needsOf(chances)[place] ?? 0;
  const states = statesOf(chances.map(({ likelihood, under }) => ({ chance: likelihood, under })));
  if (states.kind !== 'states') return NaN; // more chances than count are never put into a model
  return states.chances.reduce((sum, chance, i) => (canHappen(needs, states.happened[i] as number) ? sum + chance : sum), 0);
}
