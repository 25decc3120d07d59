import { allRules, problemsIn, type AnyRule } from './all-rules.js';
import { introChapters } from './manual-intro.js';
import { kindsChapter } from './manual-kinds.js';
import { problemsChapter, type FindProblems } from './manual-problems.js';
import { topicsChapter } from './manual-topics.js';
import { valuesChapter } from './manual-values.js';

/** The reference manual: how to read it, the shape of a line, values, every kind, every trade topic, every problem. */
export function emitManual(rules: readonly AnyRule[] = allRules(), findProblems: FindProblems = problemsIn): Record<string, string> {
  const chapters = [introChapters(), valuesChapter(), kindsChapter(), topicsChapter(), problemsChapter(rules, findProblems)];
  return { 'schemas/manual.md': `${chapters.join('\n\n')}\n` };
}
