import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { factBelow } from './lines.js';
import { mendsNothing } from './mends-nothing.js';

const optionWithoutWarranty: Rule<{ readonly option: string }> = {
  code: 'option-without-warranty', family: 'money', severity: 'advice', title: 'An option without a warranty',
  message: ({ option }) => ({
    what: `Option ${clip(option)} does not say how long it is warranted.`,
    why: 'Options are compared by price and by how long they are answered for.',
    instead: 'Write warranty and a time below it, such as warranty 12 mo; check your local rule on warranty.',
  }),
  fix: (_, at) => ({ title: 'Add warranty 12 mo', ...factBelow(at, 'warranty', '12 mo') }),
  example: example({ one: '  labour "Front seal" 2 h\n    because seen\n' }).replace('  warranty 12 mo\n', '').replace('option one "Mend it"', '«option one "Mend it"»'),
};

/** A used part without a warranty has its own message, so it is not told again of its option. */
export const warrantyCheck = optionCheck(optionWithoutWarranty, function* find({ option, repairs }) {
  if (!repairs || option.warranty !== undefined || mendsNothing(option) || option.parts.some((part) => part.condition === 'used')) return;
  yield found(optionWithoutWarranty, option.at, { option: option.name });
});
