import type { Span } from '../../language/index.js';
import type { Estimate } from '../../estimate/index.js';
import { statesOf } from '../chance/index.js';
import type { Money } from '../money.js';
import { pertMean } from '../schedule/index.js';
import { createTape, type Leaf } from '../tape.js';
import { inTimeOf } from './in-time.js';
import type { OptionModel } from './model.js';

/**
 * What an option costs in all on average, over every state of its chances, exactly; amounts with three figures count
 * with their three-point mean, (low + 4 likely + high)/6, and cores come back as often as each state's plan has them
 * back in time. `given` says of some chances whether they happen, by the
 * place they are written at; the option's other chances keep theirs.
 */
export type Expected = (given: ReadonlyMap<Span, boolean>) => number;

export function expectedOf(model: OptionModel, estimate: Estimate, money: Money): Expected {
  const states = statesOf(model.chances.map(({ likelihood, under }) => ({ chance: likelihood, under })));
  if (states.kind !== 'states') return () => NaN; // more chances than count are never put into a model
  const costs = costsOf(model, states.happened, estimate, money);
  return (given) => {
    let must = 0;
    let mustNot = 0;
    model.chances.forEach(({ chance }, bit) => {
      const happens = given.get(chance.at);
      if (happens === true) must |= 1 << bit;
      if (happens === false) mustNot |= 1 << bit;
    });
    let weight = 0;
    let sum = 0;
    states.happened.forEach((state, i) => {
      if ((state & must) !== must || (state & mustNot) !== 0) return;
      weight += states.chances[i] as number;
      sum += (states.chances[i] as number) * (costs[i] as number);
    });
    // What can't happen has no average of its own; the state has no weight either.
    return weight > 0 ? sum / weight : (costs[0] as number);
  };
}

function costsOf(model: OptionModel, states: Uint16Array, estimate: Estimate, money: Money): Float64Array {
  const tape = createTape(money, estimate.shop.rounding);
  const node = tape.node(model.inAll);
  for (const leaf of tape.leaves) if (leaf.low !== leaf.high) tape.set(leaf, pertMean(leaf));
  const inTime = inTimeOf(model, estimate, money);
  const cores = model.cores.map(({ inTime: isBack }) => (tape.node(isBack), tape.leafAt(isBack.at as Span) as Leaf));
  const gates = model.chances.map(({ gate }) => (tape.node(gate), tape.leafAt(gate.at as Span) as Leaf));
  return Float64Array.from(states, (state) => {
    gates.forEach((leaf, bit) => tape.set(leaf, (state >> bit) & 1));
    // The refund hangs on nothing else that varies, and the cost is straight in it: so its share is its average.
    inTime(state).forEach((share, k) => tape.set(cores[k] as Leaf, share));
    tape.run();
    return tape.valueOf(node);
  });
}
