import { MOST_CHANCES, statesOf, type States, type YesNo } from '../chance/index.js';
import { isChance } from './information-question.js';

/** Something that may or may not turn out to be so; what it hangs on is in the same list. */
export interface YesOrNo extends YesNo {
  readonly name: string;
}

/** One way all of them can turn out together. */
export interface JointState {
  /** The names of what is so, joined by ` + `, or `none`. */
  readonly name: string;
  readonly chance: number;
  /** For each of the list, whether it is so. */
  readonly happens: readonly boolean[];
}

export interface JointStates {
  readonly kind: 'states';
  readonly of: readonly YesOrNo[];
  /** The first of the list is the lowest bit: none, first, second, first and second, third, … */
  readonly states: readonly JointState[];
}

export type SeveralProblem =
  | { readonly kind: 'nothing given' }
  | { readonly kind: 'too many'; readonly count: number; readonly most: number }
  | { readonly kind: 'chance out of range'; readonly index: number; readonly chance: number }
  /** It hangs on what is not in the list. */
  | { readonly kind: 'hangs on none of them'; readonly index: number }
  /** One look for each of the list is needed. */
  | { readonly kind: 'wrong length'; readonly length: number; readonly needed: number };

export interface SeveralRefused {
  readonly kind: 'refused';
  readonly problems: readonly SeveralProblem[];
}

/** The most that are taken together: 64 states and as many results are what a reader can still be told about. */
const MOST_TOGETHER = 6;

/**
 * Turns chances that are independent of each other, but for what they hang on, into the joint states of the first `together`
 * of them: those behind are only what these hang on, and are summed over. What can't be is left out.
 */
export function severalStates(chances: readonly YesOrNo[], together = chances.length): JointStates | SeveralRefused {
  const problems = problemsOf(chances, together);
  if (problems.length > 0) return { kind: 'refused', problems };
  const all = statesOf(chances) as States; // there are not too many
  const of = chances.slice(0, together);
  const sums = new Float64Array(1 << together);
  all.happened.forEach((state, i) => {
    const set = state & (sums.length - 1);
    sums[set] = (sums[set] as number) + (all.chances[i] as number);
  });
  const states = [...sums].flatMap((chance, set): JointState[] => {
    const happens = of.map((_, i) => (set & (1 << i)) !== 0);
    return chance > 0 ? [{ name: nameOf(of, happens), chance, happens }] : [];
  });
  return { kind: 'states', of, states };
}

/** How well a test tells one of them: the chance that it shows it where it is so, and where it is not. */
export interface Look {
  readonly finds: number;
  readonly wrongly: number;
}

/** A result of a joint test, in the form that a test's results have. */
export interface JointResult {
  /** The names of what is shown, joined by ` + `, or `none`. */
  readonly name: string;
  /** For each of the list, whether it is shown; undefined where the test does not look for it. */
  readonly shows: readonly (boolean | undefined)[];
  /** The chance of exactly this result in each joint state. */
  readonly chances: readonly number[];
}

/**
 * The likelihood matrix of a test that looks for several things at once; its results are which of them it shows.
 * Findings are taken to be independent given the state: whether it errs about one says nothing about whether it
 * errs about another. That is an assumption; a test that misses everything at once, when it is badly done, breaks it.
 * `wrongly` holds for a thing whose parent isn't so as well. No look, no result: 2 to the number of looks, 1 for none.
 */
export function jointTest({ of, states }: JointStates, looks: readonly (Look | undefined)[]): { readonly kind: 'results'; readonly results: readonly JointResult[] } | SeveralRefused {
  const problems: SeveralProblem[] = looks.length === of.length ? [] : [{ kind: 'wrong length', length: looks.length, needed: of.length }];
  for (const [index, look] of looks.entries()) {
    for (const chance of look === undefined ? [] : [look.finds, look.wrongly]) if (!isChance(chance)) problems.push({ kind: 'chance out of range', index, chance });
  }
  if (problems.length > 0) return { kind: 'refused', problems };
  const looked = looks.flatMap((look, i) => (look === undefined ? [] : [{ i, ...look }]));
  const rows = states.map(({ happens }) => likelihoods(looked.map(({ i, finds, wrongly }) => (happens[i] === true ? finds : wrongly))));
  const results = Array.from({ length: 1 << looked.length }, (_, set): JointResult => {
    const shows = of.map((): boolean | undefined => undefined);
    for (const [bit, { i }] of looked.entries()) shows[i] = (set & (1 << bit)) !== 0;
    return { name: nameOf(of, shows), shows, chances: rows.map((row) => row[set] as number) };
  });
  return { kind: 'results', results };
}

/** The chance of each set of showings in one state, from the chance of each showing; the first is the lowest bit. */
function likelihoods(shown: readonly number[]): Float64Array {
  const row = new Float64Array(1 << shown.length);
  row[0] = 1;
  for (const [bit, chance] of shown.entries()) {
    for (let set = 0; set < 1 << bit; set++) {
      row[set | (1 << bit)] = (row[set] as number) * chance;
      row[set] = (row[set] as number) * (1 - chance);
    }
  }
  return row;
}

function nameOf(list: readonly YesOrNo[], flags: readonly (boolean | undefined)[]): string {
  return list.filter((_, i) => flags[i] === true).map((one) => one.name).join(' + ') || 'none';
}

function problemsOf(chances: readonly YesOrNo[], together: number): SeveralProblem[] {
  if (together === 0) return [{ kind: 'nothing given' }];
  if (together > MOST_TOGETHER) return [{ kind: 'too many', count: together, most: MOST_TOGETHER }];
  if (chances.length > MOST_CHANCES) return [{ kind: 'too many', count: chances.length, most: MOST_CHANCES }];
  return chances.flatMap(({ chance, under = [] }, index): SeveralProblem[] => [
    ...(isChance(chance) ? [] : [{ kind: 'chance out of range', index, chance } as const]),
    ...(under.some((place) => chances[place] === undefined) ? [{ kind: 'hangs on none of them', index } as const] : []),
  ]);
}
