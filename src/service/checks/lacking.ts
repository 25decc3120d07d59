import type { Rule, Severity } from '../../language/index.js';
import type { Source } from '../../estimate/index.js';
import { clip, type Topic } from '../../vocabulary/index.js';
import { found, optionCheck, type Check } from './check.js';
import type { OptionView, View } from './view.js';

/** What a line that is missing would be, if it were written. */
export interface MissingLine {
  readonly kind: 'part' | 'sublet' | 'labour';
  readonly name: string;
  readonly title: string;
}

/** An option has some work, and nothing in it stands for what goes with that work. */
export interface Lacks {
  /** Title of the line that calls for it. */
  readonly work: string;
  readonly option: string;
  /** What would answer it; any of these. */
  readonly topics: readonly Topic[];
  readonly line: MissingLine;
  /** True where one line alone calls for it by what it is taken for: it may be taken for the wrong thing. */
  readonly alone: boolean;
}

/** Finds the line of an option that calls for something; `topics` are what such a line stands for, where that is all. */
interface Calling {
  (one: OptionView, view: View): Source | undefined;
  readonly topics?: readonly Topic[];
}

interface Lacking {
  readonly code: string;
  readonly severity: Severity;
  readonly title: string;
  /** The line of an option that calls for something, or undefined where none does. */
  readonly when: Calling;
  readonly topics: readonly [Topic, ...Topic[]];
  readonly line: MissingLine;
  /** Behind “WORK in option OPTION”: a verb phrase with its full stop. */
  readonly what: string;
  readonly why: string;
  readonly instead: string;
  readonly example: string;
}

/** A check for work that is not complete: common practice, told once for each line that calls for something. */
export function lacking({ code, severity, title, when, topics, line, what, why, instead, example }: Lacking): Check {
  const rule: Rule<Lacks> = {
    code, family: 'job', severity, title,
    message: ({ work, option }) => ({ what: `“${clip(work)}” in option ${clip(option)} ${what}`, why, instead }),
    example,
  };
  return optionCheck(rule, function* find(one, view) {
    if (one.has(...topics)) return;
    const cause = when(one, view);
    if (cause === undefined) return;
    const alone = when.topics !== undefined && new Set(when.topics.flatMap((topic) => one.lines(topic))).size === 1;
    yield found(rule, one.placeOf(cause), { work: cause.record.title?.text ?? cause.record.name?.name ?? '', option: one.option.name, topics, line, alone });
  });
}

/** The first line of an option that stands for one of these. */
export function lineFor(...topics: readonly Topic[]): Calling & ((one: OptionView) => Source | undefined) {
  const find = (one: OptionView): Source | undefined => {
    for (const topic of topics) {
      const [first] = one.lines(topic);
      if (first !== undefined) return first;
    }
    return undefined;
  };
  return Object.assign(find, { topics });
}
