/** A variable that takes one of some values; the chance of each stands at the same place. Values may repeat. */
export interface Discrete {
  readonly values: ArrayLike<number>;
  readonly chances: ArrayLike<number>;
}

/** A distribution with its values rising, each once, none with chance 0. */
export interface Distribution {
  readonly values: Float64Array;
  readonly chances: Float64Array;
}

/**
 * The exact distribution of a sum of independent variables, by convolution; of none: 0 for certain. Values that are
 * equal as doubles are one value: give whole numbers where sums are to meet exactly.
 *
 * Source: the convolution of probability functions, e.g. Feller, An Introduction to Probability Theory I, XI.2.
 */
export function sumOf(variables: readonly Discrete[]): Distribution {
  return variables.reduce<Distribution>((sum, variable) => convolved(sum, inOrder(variable)), { values: Float64Array.of(0), chances: Float64Array.of(1) });
}

/** The chance of at most x. */
export function chanceOfAtMost({ values, chances }: Distribution, x: number): number {
  let chance = 0;
  for (let i = 0; i < values.length && (values[i] as number) <= x; i++) chance += chances[i] as number;
  return Math.min(1, chance);
}

/** Mean and variance of a distribution. */
export function momentsOf({ values, chances }: Distribution): { readonly mean: number; readonly variance: number } {
  let mean = 0;
  for (let i = 0; i < values.length; i++) mean += (values[i] as number) * (chances[i] as number);
  let variance = 0;
  for (let i = 0; i < values.length; i++) variance += ((values[i] as number) - mean) ** 2 * (chances[i] as number);
  return { mean, variance };
}

function inOrder({ values, chances }: Discrete): Distribution {
  const order = Array.from(values, (_, i) => i).sort((a, b) => (values[a] as number) - (values[b] as number));
  return merged(order.map((i) => values[i] as number), order.map((i) => chances[i] as number));
}

/** Values in order with equal neighbours made one, and values that can't be left out. */
function merged(values: ArrayLike<number>, chances: ArrayLike<number>): Distribution {
  const outValues = new Float64Array(values.length);
  const outChances = new Float64Array(values.length);
  let at = -1;
  for (let i = 0; i < values.length; i++) {
    if (chances[i] === 0) continue;
    if (at < 0 || values[i] !== outValues[at]) outValues[++at] = values[i] as number;
    outChances[at] = (outChances[at] as number) + (chances[i] as number);
  }
  return { values: outValues.slice(0, at + 1), chances: outChances.slice(0, at + 1) };
}

/** The sum shifted by each value of the next variable, merged in one by one. */
function convolved(sum: Distribution, next: Distribution): Distribution {
  let all: Distribution = { values: new Float64Array(), chances: new Float64Array() };
  next.values.forEach((by, j) => {
    const chance = next.chances[j] as number;
    all = mixed(all, { values: sum.values.map((value) => value + by), chances: sum.chances.map((one) => one * chance) });
  });
  return all;
}

function mixed(a: Distribution, b: Distribution): Distribution {
  const count = a.values.length + b.values.length;
  const values = new Float64Array(count);
  const chances = new Float64Array(count);
  for (let i = 0, j = 0, at = 0; at < count; at++) {
    const fromA = j >= b.values.length || (i < a.values.length && (a.values[i] as number) <= (b.values[j] as number));
    values[at] = (fromA ? a.values[i] : b.values[j]) as number;
    chances[at] = (fromA ? a.chances[i++] : b.chances[j++]) as number;
  }
  return merged(values, chances);
}
