import type { Rule } from '../../language/index.js';
import { clip, is, kinds } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';
import { withoutName } from './lines.js';

const consideredAndDone: Rule<{ readonly name: string }> = {
  code: 'considered-and-done', family: 'names', severity: 'advice', title: 'Work to consider that is done anyway',
  message: ({ name }) => ({
    what: `${clip(name)} is to be considered, and every option that does work does it.`,
    why: 'There is nothing left to decide about it, so it never shows up as cheap while it is open.',
    instead: 'Remove it behind consider, or leave it out of an option.',
  }),
  fix: ({ name }, at) => ({ title: `Remove ${name} behind consider`, ...withoutName(at) }),
  example: example({ lines: 'labour front "Front seal: replace" 2 h\n  because seen\nconsider «front»\n', one: '  do front\n' }),
};

export const consideredCheck = wholeCheck(consideredAndDone, function* find({ resolved, estimate }) {
  const working = estimate.options.filter(({ labour }) => labour.length > 0);
  if (estimate.consider.length === 0 || working.length === 0) return;
  const done = new Set(estimate.consider.filter((job) => working.every(({ labour }) => labour.includes(job))).map(({ name }) => name));
  for (const record of resolved.records) {
    if (!is(record, kinds.consider)) continue;
    for (const { name, at } of record.values.labour ?? []) if (done.has(name)) yield found(consideredAndDone, at, { name });
  }
});
