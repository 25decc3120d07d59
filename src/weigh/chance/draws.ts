import { checkChance, type Curve } from './curve.js';
import { drawsFor } from './random.js';

/** How a sample is drawn. The same plan gives the same bytes on every machine. */
export interface DrawPlan {
  /** From 1 to 65 536. */
  readonly cases: number;
  /** A whole number of 32 bits. */
  readonly seed: number;
}

/** A stratified sample; each of its columns is known by a key and holds one entry for each case. */
export interface Draws extends DrawPlan {
  /** The stratum of each case, 0 to cases - 1, each once. Kept: not to be written to. */
  readonly permutation: (key: string) => Uint16Array;
  /** 1 in each case in which a yes/no chance happens, 0 in the others. */
  readonly happens: (key: string, chance: number) => Uint8Array;
  /** What an uncertain amount comes to in each case. */
  readonly amounts: (key: string, curve: Curve) => Float64Array;
}

/**
 * A Latin hypercube sample: the range of every variable is cut into as many strata of equal chance as there are
 * cases, each stratum is taken once, at its middle, and the strata of different variables are paired at random.
 * A column depends on nothing but its key, the seed and the number of cases: a variable more or less in a file
 * leaves the draws of all others as they were, and one key is one draw, wherever it counts.
 *
 * Source: McKay, Beckman & Conover, Technometrics 21(2), 1979. Bounds on its errors: `errors.ts`.
 */
export function createDraws({ cases, seed }: DrawPlan): Draws {
  const kept = new Map<string, Uint16Array>();
  const permutation = (key: string): Uint16Array => {
    const before = kept.get(key);
    if (before !== undefined) return before;
    const made = permutationOf(key, cases, seed);
    kept.set(key, made);
    return made;
  };
  return {
    cases, seed, permutation,
    happens: (key, chance) => occurs(permutation(key), chance),
    amounts: (key, curve) => taken(permutation(key), curve.strata(cases)),
  };
}

/** The most cases that a sample may have. */
const MOST_CASES = 65_536;

/**
 * The whole numbers below `cases` in an order that depends on key and seed alone. Throws a RangeError beyond 65 536.
 *
 * Source: R. A. Fisher & F. Yates' shuffle, as in Knuth, The Art of Computer Programming 2, 3.4.2, algorithm P.
 */
function permutationOf(key: string, cases: number, seed: number): Uint16Array {
  if (!(Number.isInteger(cases) && cases >= 1 && cases <= MOST_CASES)) throw new RangeError(`A sample has 1 to ${MOST_CASES} cases, not ${cases}.`);
  const draw = drawsFor(key, seed);
  const order = new Uint16Array(cases);
  for (let i = 0; i < cases; i++) {
    const j = draw(i + 1);
    order[i] = order[j] as number;
    order[j] = i;
  }
  return order;
}

/**
 * A yes/no chance by strata: it happens in the cases whose stratum has its middle below the chance. So many cases
 * are within one half of chance × cases.
 */
export function occurs(permutation: Uint16Array, chance: number): Uint8Array {
  checkChance(chance);
  const cases = permutation.length;
  const happens = new Uint8Array(cases);
  for (let i = 0; i < cases; i++) happens[i] = ((permutation[i] as number) + 0.5) / cases < chance ? 1 : 0;
  return happens;
}

/** What each case takes from the values of the strata. */
function taken(permutation: Uint16Array, strata: Readonly<Float64Array>): Float64Array {
  const values = new Float64Array(permutation.length);
  for (let i = 0; i < values.length; i++) values[i] = strata[permutation[i] as number] as number;
  return values;
}
