import { drawsFor } from '../../weigh/chance/random.js';

/** What an input is made with: a row of numbers that depends on the seed and on the number of the input alone. */
export interface Dice {
  /** A whole number from 0 to `most`, at most 65 535. */
  readonly upTo: (most: number) => number;
  /** True in about so many of a hundred throws. */
  readonly chance: (percent: number) => boolean;
  readonly pick: <T>(list: readonly T[]) => T;
  /** A place in a text, from 0 to its length. */
  readonly placeIn: (text: string) => number;
}

export function diceFor(seed: number, input: number): Dice {
  const draw = drawsFor(`fuzz ${input}`, seed);
  const upTo = (most: number) => draw(Math.min(most, 65_535) + 1);
  return {
    upTo,
    chance: (percent) => upTo(99) < percent,
    pick: <T>(list: readonly T[]) => list[upTo(list.length - 1)] as T,
    placeIn: ({ length }) => (length <= 65_535 ? upTo(length) : Math.floor(((upTo(65_535) * 65_536 + upTo(65_535)) / 4_294_967_296) * (length + 1))),
  };
}
