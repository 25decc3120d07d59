import type { Rule } from '../../language/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const validTooShort: Rule<undefined> = {
  code: 'valid-too-short', family: 'money', severity: 'warning', title: 'An estimate that never holds',
  message: () => ({
    what: 'These prices hold for less than a day.',
    why: 'The estimate has run out before the customer can read it.',
    instead: 'Write a day or more behind valid, such as valid 14 d.',
  }),
  fix: (_, at) => ({ title: 'Write 14 d', at, text: '14 d' }),
  example: example({ header: '  start 2026-11-30\n  valid «0 d»\n', one: '  labour "Front seal" 2 h\n    because seen\n' }),
};

export const shortCheck = wholeCheck(validTooShort, function* find({ header: { valid } }) {
  if (valid?.likely.lt(1) === true) yield found(validTooShort, valid.at, undefined);
});
