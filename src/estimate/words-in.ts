import type { Choice } from '../vocabulary/index.js';

/** The words of a list of choices, each once. */
export function wordsIn<W extends string>(choices: readonly Choice<W>[] | undefined): W[] {
  return choices === undefined ? [] : choices.length === 1 ? [(choices[0] as Choice<W>).word] : [...new Set(choices.map((choice) => choice.word))];
}
