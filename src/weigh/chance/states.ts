/** Something that happens or not. */
export interface YesNo {
  /** The chance that it happens, given that it can. */
  readonly chance: number;
  /** Places of others of which one must happen before this one can, wherever they stand; without any it hangs on nothing. */
  readonly under?: readonly number[] | undefined;
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
 * Lists every state that can occur, with its exact chance: what hangs on others happens only where one of them did. What
 * hangs on nothing but itself, round a circle, never happens. Throws a RangeError for a chance outside 0 to 1, or for one that
 * hangs on what is not in the list.
 *
 * Source: the multiplication rule over a probability tree, e.g. Feller, An Introduction to Probability Theory I, V.2. Each
 * step of the tree asks the first that can happen by now and was not asked before, so that no state is reached twice.
 */
export function statesOf(all: readonly YesNo[]): States | TooManyChances {
  if (all.length > MOST_CHANCES) return { kind: 'too-many-chances', most: MOST_CHANCES };
  all.forEach(check);
  const needs = needsOf(all);
  const chances = new Float64Array(1 << all.length);
  const ask = (state: number, asked: number, weight: number): void => {
    let i = 0;
    while (i < all.length && ((asked & (1 << i)) !== 0 || !canHappen(needs[i] as number, state))) i++;
    const next = all[i];
    if (next === undefined) {
      chances[state] = weight;
      return;
    }
    if (next.chance > 0) ask(state | (1 << i), asked | (1 << i), weight * next.chance);
    if (next.chance < 1) ask(state, asked | (1 << i), weight * (1 - next.chance));
  };
  ask(0, 0, 1);
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

/**
 * Turns what would happen, as bits, into what does: some hang on others that did not. `needs` is what `needsOf` gives.
 */
export function happening(would: number, needs: readonly number[]): number {
  let happened = 0;
  for (;;) {
    const before = happened;
    needs.forEach((some, i) => {
      if ((would & (1 << i)) !== 0 && canHappen(some, happened)) happened |= 1 << i;
    });
    if (happened === before) return happened;
  }
}

/** For each chance those of which one must have happened, as bits; 0 where it hangs on nothing. */
export function needsOf(all: readonly Pick<YesNo, 'under'>[]): readonly number[] {
  return all.map(({ under = [] }) => under.reduce((bits, place) => bits | (1 << place), 0));
}

/** Whether a chance with these needs can happen where others have. */
export function canHappen(needs: number, happened: number): boolean {
  return needs === 0 || (needs & happened) !== 0;
}

function check({ chance, under = [] }: YesNo, i: number, all: readonly YesNo[]): void {
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`A chance lies from 0 to 1, not at ${chance}.`);
  for (const place of under) if (all[place] === undefined) throw new RangeError(`Chance ${i} can't hang on ${place}: there are ${all.length}.`);
}
