/** Something that happens or not. */
export interface YesNo {
  /** The chance that it happens, given that its parent did. */
  readonly chance: number;
  /** The place of the chance without which this one can't happen; it stands earlier in the list. */
  readonly parent?: number | undefined;
}

/** All states in which some yes/no chances may turn out. */
export interface States {
  readonly kind: 'states';
  /** One number for each state: bit i is set where chance i happened. Rising. */
  readonly happened: Uint16Array;
  /** The chance of each state; none is 0, and they add up to 1. */
  readonly chances: Float64Array;
}

/** More chances than the limit; the states are not listed. */
export interface TooManyChances {
  readonly kind: 'too-many-chances';
  readonly most: number;
}

/** The most chances whose states are all listed: 4096 states. */
export const MOST_CHANCES = 12;

/**
 * Lists every state that can occur, with its exact chance: a chance whose parent did not happen does not happen.
 * Throws a RangeError for a chance outside 0 to 1, or a parent that does not stand earlier.
 *
 * Source: the multiplication rule over a probability tree, e.g. Feller, An Introduction to Probability Theory I, V.2.
 */
export function statesOf(all: readonly YesNo[]): States | TooManyChances {
  if (all.length > MOST_CHANCES) return { kind: 'too-many-chances', most: MOST_CHANCES };
  all.forEach(check);
  const chances = new Float64Array(1 << all.length);
  chances[0] = 1;
  for (let i = 0; i < all.length; i++) {
    const { chance, parent } = all[i] as YesNo;
    const bit = 1 << i;
    const needs = parent === undefined ? 0 : 1 << parent;
    for (let state = 0; state < bit; state++) {
      const before = chances[state] as number;
      if (before === 0 || (state & needs) !== needs) continue;
      chances[state | bit] = before * chance;
      chances[state] = before * (1 - chance);
    }
  }
  const happened = new Uint16Array(chances.length);
  let count = 0;
  for (let state = 0; state < chances.length; state++) {
    const chance = chances[state] as number;
    if (chance === 0) continue;
    happened[count] = state;
    chances[count++] = chance;
  }
  return { kind: 'states', happened: happened.slice(0, count), chances: chances.slice(0, count) };
}

function check({ chance, parent }: YesNo, i: number): void {
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`A chance lies from 0 to 1, not at ${chance}.`);
  if (parent !== undefined && !(Number.isInteger(parent) && parent >= 0 && parent < i)) throw new RangeError(`Chance ${i} can't depend on ${parent}: its parent stands earlier.`);
}
