import { zero, type Decimal } from '../../vocabulary/index.js';
import { countBits } from '../bits.js';

/** Which of the two versions each factor is taken from. */
export type Corner = readonly ('before' | 'after')[];

/**
 * Divides a difference among the factors that moved it: each gets its step at the mean of where the others stand, over
 * every order in which they could have moved (Shapley, Contributions to the Theory of Games II, 1953; for two factors
 * the change of each at the mean of the other). The parts add up to the difference, and turn their sign when the two
 * versions change places. Undefined where a corner can't be worked out.
 */
export function split(count: number, valueAt: (corner: Corner) => Decimal | undefined): readonly Decimal[] | undefined {
  const values: Decimal[] = [];
  for (let set = 0; set < 1 << count; set++) {
    const value = valueAt(Array.from({ length: count }, (_, i) => ((set & (1 << i)) === 0 ? 'before' : 'after')));
    if (value === undefined) return undefined;
    values.push(value);
  }
  const all = factorial(count);
  return Array.from({ length: count }, (_, i) => {
    let sum = zero;
    for (let set = 0; set < values.length; set++) {
      if ((set & (1 << i)) !== 0) continue;
      const before = countBits(set);
      const step = (values[set | (1 << i)] as Decimal).minus(values[set] as Decimal);
      sum = sum.plus(step.times(factorial(before) * factorial(count - before - 1)));
    }
    return sum.div(all);
  });
}

function factorial(n: number): number {
  return n < 2 ? 1 : n * factorial(n - 1);
}
