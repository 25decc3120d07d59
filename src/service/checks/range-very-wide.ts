import type { Rule } from '../../language/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';
import { factsOf, MOST_TIMES } from './record-facts.js';

const rangeVeryWide: Rule<{ readonly low: string; readonly high: string }> = {
  code: 'range-very-wide', family: 'money', severity: 'advice', title: 'A range that says nothing',
  message: ({ low, high }) => ({
    what: `This figure may be ${low}, and it may be ${high}.`,
    why: `A range of ${MOST_TIMES} times or more is usually a decimal point that slipped; if it is meant, nothing can be decided by it.`,
    instead: 'Correct it, or look further until it is narrower.',
  }),
  example: example({ one: '  labour "Front seal" «2.5 / 3 / 40 h»\n    because seen\n' }),
};

export const rangeCheck = wholeCheck(rangeVeryWide, function* find({ resolved, isOwn }) {
  for (const { record, amounts } of factsOf(resolved).wide()) {
    if (!isOwn({ record })) continue;
    for (const { at, low, high } of amounts) yield found(rangeVeryWide, at, { low: low.toFixed(), high: high.toFixed() });
  }
});
