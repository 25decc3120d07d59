import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { mendsNothing } from './mends-nothing.js';
import { workFindings } from './work-findings.js';

/** Common practice: work without a finding behind it is a guess. Once for each option: tests and fills need none. */
export const workWithoutFinding: Rule<{ readonly option: string }> = {
  code: 'work-without-finding', family: 'job', severity: 'advice', title: 'An option that no finding supports',
  message: ({ option }) => ({
    what: `No finding stands behind the work of option ${clip(option)}.`,
    why: 'Without one the work is a guess, and the customer may ask what it rests on.',
    instead: 'Write because and the name of a finding below the work or the option.',
  }),
  example: example({ lines: 'labour seal "Front seal" 2 h\n', one: '  do seal\n', other: 'option two "Mend it as well"\n  warranty 12 mo\n  labour "Rear seal" 3 h\n    because seen\n' }).replace('option one "Mend it"', '«option one "Mend it"»'),
};

export const workCheck = optionCheck(workWithoutFinding, function* find(one, view) {
  if (mendsNothing(one.option) || !one.option.labour.some(view.isOwn) || workFindings(one, view).length > 0) return;
  yield found(workWithoutFinding, one.option.at, { option: one.option.name });
});
