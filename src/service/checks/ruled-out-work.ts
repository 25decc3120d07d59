import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

/** Common practice: what was found supports work, or speaks against it. Of an option that is ruled out itself nobody asks it. */
const ruledOutWork: Rule<{ readonly option: string; readonly job: string; readonly finding: string }> = {
  code: 'ruled-out-work', family: 'job', severity: 'advice', title: 'Work that a finding speaks against',
  message: ({ option, job, finding }) => ({
    what: `Option ${clip(option)} does “${clip(job)}”, and the finding “${clip(finding)}” speaks against that work.`,
    why: 'The customer would pay for work that, by what was found, helps nothing or cannot be done.',
    instead: 'Take the work out of the option, or its name from behind rules out. Where the whole option is no choice, write the option’s name there instead.',
  }),
  example: example({ lines: 'finding thin "Bores too wide to be cut again"\n  rules out bore\nlabour bore "Cut the bores" 4 h\n  because seen\n', one: '  do bore\n' }).replace('option one "Mend it"', '«option one "Mend it"»'),
};

export const ruledOutWorkCheck = optionCheck(ruledOutWork, function* find({ option }, { estimate: { findings } }) {
  if (option.ruledOutBy.length > 0) return;
  for (const finding of findings) {
    if (finding.rulesOut.length === 0) continue;
    for (const job of option.labour) {
      if (job.name === undefined || !finding.rulesOut.includes(job.name)) continue;
      yield found(ruledOutWork, option.at, { option: option.name, job: job.title, finding: finding.title }, { at: finding.at, says: 'The finding' });
    }
  }
});
