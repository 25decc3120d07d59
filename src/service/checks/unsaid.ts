import type { Rule, Span } from '../../language/index.js';
import { found, wholeCheck, type Check } from './check.js';
import { factBelow } from './lines.js';
import type { View } from './view.js';

/** Something that a shop or an estimate should say of itself, on a line of its own below it. */
interface Unsaid {
  readonly code: string;
  readonly title: string;
  /** Where the line belongs, if it is wanted and missing. */
  readonly missing: (view: View) => Span | undefined;
  readonly what: string;
  readonly why: string;
  readonly instead: string;
  /** The line that the fix adds: its word, what stands behind it, and what the fix is called. */
  readonly add: { readonly word: string; readonly value: string; readonly title: string };
  readonly example: string;
}

/** A check for such a line: advice, since there may be a reason to leave it out. */
export function unsaid({ code, title, missing, what, why, instead, add, example }: Unsaid): Check {
  const rule: Rule<undefined> = {
    code, family: 'money', severity: 'advice', title,
    message: () => ({ what, why, instead }),
    fix: (_, at) => ({ title: add.title, ...factBelow(at, add.word, add.value) }),
    example,
  };
  return wholeCheck(rule, function* find(view) {
    const at = missing(view);
    if (at !== undefined) yield found(rule, at, undefined);
  });
}
