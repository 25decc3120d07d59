import { Places, type Rule } from '../../language/index.js';
import type { Labour, Sublet } from '../../estimate/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { factBelow } from './lines.js';

/** Common practice: nothing goes to the machine shop before it is off the engine. */
const sentAwayWhole: Rule<{ readonly job: string; readonly sublet: string }> = {
  code: 'sent-away-whole', family: 'job', severity: 'advice', title: 'Outside work before anything is apart',
  message: ({ job, sublet }) => ({
    what: `“${clip(job)}” does not say when things are apart, so the calendar sends “${clip(sublet)}” away before it begins.`,
    why: 'Nothing can go to the machine shop before it is off the engine: the ready date is too early.',
    instead: 'Write how far the work gets before that: apart after 4 h. Or split it into two jobs, with after on the second.',
  }),
  fix: (_, at) => ({ title: 'Write apart after 4 h', ...factBelow(at, 'apart after', '4 h') }),
  example: example({ lines: '«labour rear-head "Rear head" 11 h»\n  because seen\n  uses head-work\nsublet head-work "Valves, seats, faces" 310.00 back in 4 d\n', one: '  do rear-head\n' }),
};

export const sentAwayCheck = optionCheck(sentAwayWhole, function* find({ option }) {
  for (const { at, title, sublets } of sending.itemsIn(option.labour, option.record)) {
    for (const sublet of sublets.filter(isSent).slice(0, 1)) yield found(sentAwayWhole, at, { job: title, sublet: sublet.title });
  }
});

const sending = new Places<Labour>(({ apart, done, modes, sublets }) => apart === undefined && done === undefined && modes.length > 0 && sublets.some(isSent));

function isSent({ backIn, after }: Sublet): boolean {
  return backIn !== undefined && after.length === 0;
}
