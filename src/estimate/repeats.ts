import { limits, problem, type Problem, type Span } from '../language/index.js';
import type { Name } from '../vocabulary/index.js';
import { distinct } from './lookup.js';
import { saidBefore } from './name-rules.js';

/** Reports names that stand twice behind one word of a record. */
export function reportRepeats(names: readonly Name[], word: string, problems: Problem[]): void {
  if (names.length < 2 || distinct(names).length === names.length) return;
  const seen = new Map<string, Span>();
  let told = 0;
  for (const { name, at } of names) {
    const first = seen.get(name);
    if (first === undefined) seen.set(name, at);
    else if (told++ < limits.problems) problems.push(problem(saidBefore, at, { name, word }, { at: first, says: 'The first time' }));
  }
}
