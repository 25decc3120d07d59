import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

/** Common practice: a core that comes back late is not taken. */
const coreLate: Rule<{ readonly part: string; readonly option: string; readonly ready: string; readonly deadline: string }> = {
  code: 'core-late', family: 'job', severity: 'warning', title: 'A core that can’t go back in time',
  message: ({ part, option, ready, deadline }) => ({
    what: `In option ${clip(option)} the work is planned to end on ${ready}; the core of “${clip(part)}” is due on ${deadline}.`,
    why: 'No refund is counted for it, so the option looks as dear as it will be.',
    instead: 'Agree on a later day with the supplier and write it behind due, or order the part later.',
  }),
  example: example({ one: '  labour "Swap the starter" 40 h\n    because seen\n  part "Starter" 180.00 rebuilt\n    «core 60.00 due 1 d»\n' }),
};

export const coreLateCheck = optionCheck(coreLate, function* find({ weighed, option }) {
  for (const { part, core, deadline, late } of weighed.returns.cores) {
    if (late && deadline !== undefined && weighed.ready.date !== undefined) yield found(coreLate, core.at, { part: part.title, option: option.name, ready: weighed.ready.date, deadline });
  }
});
