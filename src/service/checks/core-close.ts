import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

/** Fewer days than these between the planned end and the last day for a core, and one late part loses the refund. */
const DAYS_TO_SPARE = 3;

const coreClose: Rule<{ readonly part: string; readonly option: string; readonly ready: string; readonly deadline: string }> = {
  code: 'core-close', family: 'job', severity: 'advice', title: 'A core with few days to spare',
  message: ({ part, option, ready, deadline }) => ({
    what: `In option ${clip(option)} the work is planned to end on ${ready}; the core of “${clip(part)}” is due on ${deadline}.`,
    why: `With ${DAYS_TO_SPARE} days or fewer to spare, one part that comes late loses the refund.`,
    instead: 'Agree on a later day with the supplier and write it behind due, or plan to send the core off before the road test.',
  }),
  example: example({ one: '  labour "Swap the starter" 4 h\n    because seen\n  part "Starter" 180.00 rebuilt\n    «core 60.00 due 2 d»\n' }),
};

export const coreCloseCheck = optionCheck(coreClose, function* find({ weighed, option }) {
  for (const { part, core, deadline, late } of weighed.returns.cores) {
    const ready = deadline === undefined ? undefined : weighed.ready.date;
    if (!late && deadline !== undefined && ready !== undefined && daysBetween(ready, deadline) <= DAYS_TO_SPARE) yield found(coreClose, core.at, { part: part.title, option: option.name, ready, deadline });
  }
});

function daysBetween(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / 86_400_000;
}
