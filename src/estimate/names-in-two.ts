import type { Problem } from '../language/index.js';
import { readRules } from '../vocabulary/index.js';
import { unknownName } from './name-rules.js';
import type { Scope } from './scope.js';

/**
 * `way engine out` is one slip, also where it is two messages: a name that nothing has, and a word behind it. Where that
 * word is a name, or both joined by a hyphen are one, a comma would help nobody; one message says which name is meant.
 */
export function withoutHalfNames(problems: readonly Problem[], scope: Scope): readonly Problem[] {
  const words = problems.filter(({ code }) => code === readRules.unknownWord.code);
  if (words.length === 0) return problems;
  const names = problems.filter(({ code }) => code === unknownName.code);
  const whole = new Map<Problem, Problem>();
  const told = new Set<Problem>();
  for (const word of words) {
    const { block, start } = word.at;
    const half = names.find(({ at }) => at.block === block && at.end < start && /^[ \t]+$/.test(block.text.slice(at.end, start)));
    // A name with a slip in it stays, and the comma is what is missing.
    const named = half === undefined || half.fix !== undefined ? undefined : scope.inTwoWords(half, word.at.end);
    if (half === undefined || named === undefined) continue;
    whole.set(half, named);
    told.add(word);
  }
  return whole.size === 0 ? problems : problems.filter((one) => !told.has(one)).map((one) => whole.get(one) ?? one);
}
