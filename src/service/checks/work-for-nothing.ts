import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

const workForNothing: Rule<{ readonly option: string }> = {
  code: 'work-for-nothing', family: 'money', severity: 'warning', title: 'An option with work that costs nothing',
  message: ({ option }) => ({
    what: `Option ${clip(option)} does work, and its total is nothing.`,
    why: 'Hours or a rate of 0 were probably typed to be filled in later.',
    instead: 'Write the hours and the rate; for work done free of charge, say so in a note and allow this here.',
  }),
  example: example({ one: '  labour "Front seal" 0 h\n    because seen\n' }).replace('option one "Mend it"', '«option one "Mend it"»'),
};

export const nothingCheck = optionCheck(workForNothing, function* find({ weighed, option }) {
  if (option.labour.length > 0 && weighed.totals.total.likely.lte(0)) yield found(workForNothing, option.at, { option: option.name });
});
