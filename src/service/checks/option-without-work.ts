import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';
import { promiseOf } from './promise-of.js';

const optionWithoutWork: Rule<{ readonly option: string; readonly says: string }> = {
  code: 'option-without-work', family: 'money', severity: 'warning', title: 'An option that promises something and does nothing',
  message: ({ option, says }) => ({
    what: `Option ${clip(option)} has no work, part or outside work, and yet it ${says}.`,
    why: 'No work is charged in it, so it looks like the cheapest way out.',
    instead: 'Name its work behind do, or write it below. A way out without work has no warranty, and says behind worth what the vehicle is worth after it.',
  }),
  example: example({ other: 'option two "Leave it"\n  labour "Look again" 1 h\n    because seen\n  warranty 1 mo\n' }).replace('option one "Mend it"', '«option one "Mend it"»'),
};

export const withoutWorkCheck = wholeCheck(optionWithoutWork, function* find({ estimate: { options } }) {
  for (const option of options) {
    const says = promiseOf(option);
    if (says !== undefined) yield found(optionWithoutWork, option.at, { option: option.name, says });
  }
});
