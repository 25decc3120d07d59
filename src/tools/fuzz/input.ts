import path from 'node:path';
import { diceFor, type Dice } from './dice.js';
import { grown } from './grown.js';
import { mutated, noise } from './mutate.js';
import type { Start } from './texts.js';

/** What one run is about: files by name, the first of which is the estimate, and what it said before an edit. */
export interface Input {
  readonly files: ReadonlyMap<string, string>;
  readonly name: string;
  /** The estimate before the last edit, for whatever compares two versions or remembers. */
  readonly before: string;
}

/** Shared files are looked for under these names. */
const SHARED = 'shop.yard';

/** The input of a number: the same for the same seed and the same texts to start from. */
export function inputOf(seed: number, number: number, starts: readonly Start[]): { readonly input: Input; readonly dice: Dice } {
  const dice = diceFor(seed, number);
  const start = startFor(starts, dice);
  const other = dice.pick(starts).text;
  const before = textFrom(start, other, dice);
  const text = mutated(before, 1 + dice.upTo(dice.chance(10) ? 12 : 2), dice, other);
  const files = new Map([['job.yard', text]]);
  for (const name of new Set([...text.matchAll(/^use +"([^"\n]*)"/gm)].map((found) => found[1] as string))) {
    const shared = starts.find((one) => path.basename(one.name) === name) ?? (name === SHARED ? starts.find((one) => one.name === 'samples/shop.yard') : undefined);
    if (shared !== undefined && files.size < 30) files.set(name, dice.chance(25) ? mutated(shared.text, 1 + dice.upTo(3), dice, text) : shared.text);
  }
  return { input: { files, name: 'job.yard', before }, dice };
}

/** Half of the inputs start from the shorter of two texts: what a line says shows in a short one as well, and much quicker. */
function startFor(starts: readonly Start[], dice: Dice): Start {
  const one = dice.pick(starts);
  if (dice.chance(50)) return one;
  const other = dice.pick(starts);
  return other.text.length < one.text.length ? other : one;
}

function textFrom(start: Start, other: string, dice: Dice): string {
  if (dice.chance(6)) return noise(dice);
  const text = dice.chance(4) ? grown(start.text, dice) : start.text;
  return dice.chance(25) ? text : mutated(text, 1 + dice.upTo(4), dice, other);
}
