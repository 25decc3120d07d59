import { problem, type Problem, type Rule } from '../language/index.js';
import type { Resolved } from '../estimate/index.js';
import { wordsOf } from '../report/index.js';
import { clip } from '../vocabulary/index.js';

/** Weighing threw. The fault is the tool's, not the writer's. No file shows it on purpose, so it is not among the rules with examples. */
const weighingStopped: Rule<{ readonly why: string }> = {
  code: 'weighing-stopped', family: 'shape', severity: 'error', title: 'Figures that could not be worked out',
  message: ({ why }) => ({
    what: `Working out the figures of this file stopped with “${clip(why)}”.`,
    why: 'No option has figures of the text as it stands, and the checks of the trade are not made; lines that can’t be read are told as ever.',
    instead: 'Please report it, with the lines it is about if you can. What was last written may be what it stumbles over.',
  }),
  example: '',
};

/** The figures of a file could not be worked out: weighing threw, for whatever reason of its own. */
export class WeighingStopped extends Error {
  constructor(error: unknown) {
    super(wordsOf(error), { cause: error });
  }
}

/** What is told of a file that could not be weighed: that, on its first line, and whatever was found while it was read. */
export function problemsWithout({ resolved, why, uri }: { readonly resolved: Resolved; readonly why: string; readonly uri: string }): readonly Problem[] {
  const first = resolved.records.find(({ block }) => block.uri === uri) ?? resolved.records[0];
  return [...(first === undefined ? [] : [problem(weighingStopped, first.at, { why })]), ...resolved.problems];
}
