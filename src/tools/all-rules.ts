import { parse, type Problem, type Rule } from '../language/index.js';
import { readBlock } from '../vocabulary/index.js';
import { allRules as registry, problemsOfExample } from '../service/index.js';

/** A rule whose data nobody here needs to know. */
export type AnyRule = Rule<never>;

/** Every rule that the manual describes, in the manual's order. */
export function allRules(): readonly AnyRule[] {
  return registry;
}

/** What is wrong with a file, for the manual's examples. */
export { problemsOfExample as problemsIn };

/** What can't be read in a file, whatever it means: problems of the language and vocabulary rooms alone. */
export function unreadableIn(text: string): readonly Problem[] {
  return parse('this.yard', text).blocks.flatMap((block) => readBlock(block).problems);
}

/** The families in the order of the manual, with the heading of each. */
export const families: readonly string[] = ['shape', 'names', 'job', 'money'];
