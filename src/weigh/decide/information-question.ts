/** What is looked for: the most of a payoff, or the least of a cost. */
export type Goal = 'most' | 'least';

/** A decision under risk, and a test that may be made before it. */
export interface TestQuestion {
  readonly goal: Goal;
  /** What may be the case, with its chance before the test; the chances add up to 1. */
  readonly states: readonly { readonly name: string; readonly chance: number }[];
  /** What may be done, with what it brings (or costs) in each state, in the order of the states. */
  readonly actions: readonly { readonly name: string; readonly values: readonly number[] }[];
  readonly test: {
    /** In the unit of the values; 0 or more, whatever the goal. */
    readonly price: number;
    /** What the test may show, with the chance of that in each state; over all results a state's chances add up to 1. */
    readonly results: readonly { readonly name: string; readonly chances: readonly number[] }[];
  };
}

/** Why a question can't be weighed. Numbers are indexes, in the order of the question. */
export type TestProblem =
  | { readonly kind: 'nothing given'; readonly of: 'states' | 'actions' | 'results' }
  /** A state's own chance where `result` is undefined, otherwise that of a result in the state. Not a number, below 0 or above 1. */
  | { readonly kind: 'chance out of range'; readonly state: number; readonly result: number | undefined; readonly chance: number }
  /** Of all states where `state` is undefined, otherwise of the results in one state. */
  | { readonly kind: 'chances do not add up'; readonly state: number | undefined; readonly sum: number }
  /** One figure for each state is needed. */
  | { readonly kind: 'wrong length'; readonly of: 'action' | 'result'; readonly index: number; readonly length: number; readonly needed: number }
  /** Not finite, or so large that sums would not be. */
  | { readonly kind: 'value out of range'; readonly action: number; readonly state: number; readonly value: number }
  /** Not finite, below 0, or too large. */
  | { readonly kind: 'price out of range'; readonly price: number };

/** How far chances may be from 1 in sum: they are written with some ten digits at most. */
const SUM_TOLERANCE = 1e-9;

/** The largest value taken, up or down; sums of it stay finite. */
const LARGEST_VALUE = 1e100;

export function isChance(chance: number): boolean {
  return chance >= 0 && chance <= 1;
}

/** Everything that is wrong with a question, in its order; empty where it can be weighed. */
export function problemsOf({ states, actions, test }: TestQuestion): TestProblem[] {
  const problems: TestProblem[] = [];
  if (states.length === 0) problems.push({ kind: 'nothing given', of: 'states' });
  if (actions.length === 0) problems.push({ kind: 'nothing given', of: 'actions' });
  if (test.results.length === 0) problems.push({ kind: 'nothing given', of: 'results' });

  for (const [state, { chance }] of states.entries()) {
    if (!isChance(chance)) problems.push({ kind: 'chance out of range', state, result: undefined, chance });
  }
  const total = states.reduce((sum, state) => sum + state.chance, 0);
  if (states.length > 0 && !(Math.abs(total - 1) <= SUM_TOLERANCE)) problems.push({ kind: 'chances do not add up', state: undefined, sum: total });

  for (const [index, { values }] of actions.entries()) {
    if (values.length !== states.length) problems.push({ kind: 'wrong length', of: 'action', index, length: values.length, needed: states.length });
    for (const [state, value] of values.entries()) {
      if (!(Math.abs(value) <= LARGEST_VALUE)) problems.push({ kind: 'value out of range', action: index, state, value });
    }
  }
  if (!(test.price >= 0 && test.price <= LARGEST_VALUE)) problems.push({ kind: 'price out of range', price: test.price });
  problems.push(...likelihoodProblems(states.length, test.results));
  return problems;
}

function likelihoodProblems(states: number, results: TestQuestion['test']['results']): TestProblem[] {
  const problems: TestProblem[] = [];
  for (const [index, { chances }] of results.entries()) {
    if (chances.length !== states) problems.push({ kind: 'wrong length', of: 'result', index, length: chances.length, needed: states });
    for (const [state, chance] of chances.entries()) {
      if (!isChance(chance)) problems.push({ kind: 'chance out of range', state, result: index, chance });
    }
  }
  // Sums say nothing where figures are missing.
  if (results.length === 0 || problems.some((problem) => problem.kind === 'wrong length')) return problems;
  for (let state = 0; state < states; state++) {
    const sum = results.reduce((total, { chances }) => total + (chances[state] as number), 0);
    if (!(Math.abs(sum - 1) <= SUM_TOLERANCE)) problems.push({ kind: 'chances do not add up', state, sum });
  }
  return problems;
}
