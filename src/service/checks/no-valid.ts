import type { Rule } from '../../language/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';
import { factBelow } from './lines.js';

export const noValid: Rule<undefined> = {
  code: 'no-valid', family: 'money', severity: 'advice', title: 'An estimate whose prices hold for ever',
  message: () => ({
    what: 'Nothing says how long these prices hold.',
    why: 'Part prices change, and a used engine may be sold tomorrow.',
    instead: 'Write it below, as in valid 14 d; check your local rule on written estimates.',
  }),
  fix: (_, at) => ({ title: 'Add valid 14 d', ...factBelow(at, 'valid', '14 d') }),
  example: example({ header: '  start 2026-11-30\n', one: '  labour "Front seal" 2 h\n    because seen\n' }).replace('estimate "E"', '«estimate "E"»'),
};

export const validCheck = wholeCheck(noValid, function* find({ header }) {
  if (header.valid === undefined) yield found(noValid, header.at, undefined);
});
