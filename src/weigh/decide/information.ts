import { problemsOf, type TestProblem, type TestQuestion } from './information-question.js';

export type { TestQuestion };

/** `worth doing` only where the test brings more than its price: at exactly its price it is left out. */
export type TestVerdict = 'worth doing' | 'not worth its price' | 'cannot change the choice';

export interface ResultWeighed {
  readonly name: string;
  readonly chance: number;
  /** What each state's chance is once the test shows this; undefined where the test can't show it. Never rounded. */
  readonly posteriors: readonly number[] | undefined;
  /** Each action's expected value then. */
  readonly expected: readonly number[] | undefined;
  /** Index of the action to take then: today's choice where it is among the best, otherwise the earliest of the best. */
  readonly best: number | undefined;
  /** Whether that is another than today's choice; never for a tie. */
  readonly changes: boolean;
}

/** All values are in the unit of the question's values; worths are 0 or more for either goal. */
export interface TestWeighed {
  readonly kind: 'weighed';
  /** Each action's expected value without the test. */
  readonly expected: readonly number[];
  /** Index of the action to take without the test: the earliest of the best. */
  readonly best: number;
  /** Expected value if the state were always known first, and what knowing it is worth. */
  readonly withPerfect: number;
  readonly perfectWorth: number;
  readonly results: readonly ResultWeighed[];
  /** Expected value with the test, before its price. */
  readonly withTest: number;
  /** What the test is worth before its price: exactly 0 where no result changes the choice, never above `perfectWorth`. */
  readonly worth: number;
  /** `worth` less the price. */
  readonly net: number;
  readonly verdict: TestVerdict;
}

export type TestAnswer = TestWeighed | { readonly kind: 'refused'; readonly problems: readonly TestProblem[] };

/**
 * Two actions whose expected values differ by less than this part of their size are a tie. Sums of doubles are off by
 * about 1e-16 for each state, so that a tie on paper would otherwise be broken by the order of summing.
 */
const NOISE = 1e-12;

/**
 * Value of information (preposterior analysis; Raiffa & Schlaifer, Applied Statistical Decision Theory, 1961): what a
 * test is worth before it is made, by Bayes' rule on the joint chances of state and result. The worth is summed from
 * the gains of the results that change the choice, so it can't come out below 0; it is held down to `perfectWorth`,
 * which it can pass by rounding alone.
 *
 * Doubles, with + − × ÷ only: the same bits on every machine. What can't be weighed comes back as problems.
 */
export function weighTest(question: TestQuestion): TestAnswer {
  const problems = problemsOf(question);
  if (problems.length > 0) return { kind: 'refused', problems };
  const { states, test } = question;
  const table = tableOf(question);
  const priors = Float64Array.from(states, (state) => state.chance);
  const weights = priors.slice();
  const expected = expectedOf(table, weights, 1);
  const best = choice(table, weights, 0);

  let perfect = 0;
  weights.fill(0);
  for (let s = 0; s < priors.length; s++) {
    weights[s] = priors[s] as number;
    perfect += gain(table, weights, choice(table, weights, best), best);
    weights[s] = 0;
  }

  let worth = 0;
  let size = 0;
  const results = test.results.map(({ name, chances }): ResultWeighed => {
    let chance = 0;
    for (let s = 0; s < priors.length; s++) chance += weights[s] = (priors[s] as number) * (chances[s] as number);
    if (chance === 0) return { name, chance, posteriors: undefined, expected: undefined, best: undefined, changes: false };
    const then = choice(table, weights, best);
    worth += gain(table, weights, then, best);
    size += sizeOf(table, weights, then, best);
    return { name, chance, posteriors: Array.from(weights, (weight) => weight / chance), expected: expectedOf(table, weights, chance), best: then, changes: then !== best };
  });
  worth = Math.min(worth, perfect);

  const today = expected[best] as number;
  const changes = results.some((result) => result.changes);
  const pays = worth - test.price > NOISE * (size + test.price);
  return {
    kind: 'weighed', expected, best, results, worth,
    withPerfect: today + table.sign * perfect, perfectWorth: perfect,
    withTest: today + table.sign * worth, net: worth - test.price,
    verdict: !changes ? 'cannot change the choice' : pays ? 'worth doing' : 'not worth its price',
  };
}

/** The values as one row for each action, turned so that more is better. */
interface Table {
  readonly values: Float64Array;
  readonly actions: number;
  readonly states: number;
  readonly sign: 1 | -1;
}

function tableOf({ goal, states, actions }: TestQuestion): Table {
  const sign = goal === 'most' ? 1 : -1;
  const values = new Float64Array(actions.length * states.length);
  for (const [a, action] of actions.entries()) for (const [s, value] of action.values.entries()) values[a * states.length + s] = sign * value;
  return { values, actions: actions.length, states: states.length, sign };
}

/** Expected values in the sign they were given in. Adding 0 turns −0 into 0. */
function expectedOf({ values, actions, states, sign }: Table, weights: Float64Array, total: number): number[] {
  return Array.from({ length: actions }, (_, a) => {
    let sum = 0;
    for (let s = 0; s < states; s++) sum += (weights[s] as number) * (values[a * states + s] as number);
    return (sign * sum) / total + 0;
  });
}

/** The best action under these weights: `first` unless another beats it, and then the earliest that none beats. */
function choice(table: Table, weights: Float64Array, first: number): number {
  let best = first;
  for (let a = 0; a < table.actions; a++) {
    if (a !== best && beats(table, weights, a, best)) best = a;
  }
  return best;
}

/** Whether one action brings more than another, by more than noise. */
function beats({ values, states }: Table, weights: Float64Array, a: number, b: number): boolean {
  let gained = 0;
  let size = 0;
  for (let s = 0; s < states; s++) {
    const weight = weights[s] as number;
    const one = values[a * states + s] as number;
    const other = values[b * states + s] as number;
    gained += weight * (one - other);
    size += weight * (Math.abs(one) + Math.abs(other));
  }
  return gained > NOISE * size;
}

/** What one action brings above another, weighted. */
function gain({ values, states }: Table, weights: Float64Array, a: number, b: number): number {
  let sum = 0;
  for (let s = 0; s < states; s++) sum += (weights[s] as number) * ((values[a * states + s] as number) - (values[b * states + s] as number));
  return sum;
}

/** The size of the figures that a gain is the difference of. */
function sizeOf({ values, states }: Table, weights: Float64Array, a: number, b: number): number {
  let sum = 0;
  for (let s = 0; s < states; s++) sum += (weights[s] as number) * (Math.abs(values[a * states + s] as number) + Math.abs(values[b * states + s] as number));
  return sum;
}
