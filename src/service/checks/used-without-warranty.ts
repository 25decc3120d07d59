import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { behind } from './lines.js';

/** Common practice: the customer is told how long a used part is answered for, even if that is not at all. */
const usedWithoutWarranty: Rule<{ readonly part: string }> = {
  code: 'used-without-warranty', family: 'money', severity: 'advice', title: 'A used part without a warranty',
  message: ({ part }) => ({
    what: `“${clip(part)}” is used, and neither it nor its option says how long it is warranted.`,
    why: 'If it fails, the labour is usually not covered, and who pays was never agreed.',
    instead: 'Write warranty and a time behind it or below the option; check your local rule on warranty.',
  }),
  fix: (_, at) => ({ title: 'Write warranty 3 mo', ...behind(at, 'warranty 3 mo') }),
  example: example({ one: '  labour "Swap the starter" 2 h\n    because seen\n  «part "Starter" 80.00 used»\n' }).replace('  warranty 12 mo\n', ''),
};

export const usedCheck = optionCheck(usedWithoutWarranty, function* find({ option }) {
  if (option.warranty !== undefined) return;
  for (const part of option.parts) if (part.condition === 'used' && part.warranty === undefined) yield found(usedWithoutWarranty, part.at, { part: part.title });
});
