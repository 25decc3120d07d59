import type { Rule } from '../../language/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';
import { factBelow } from './lines.js';

const noStart: Rule<{ readonly written: string | undefined }> = {
  code: 'no-start', family: 'money', severity: 'advice', title: 'An estimate without a day to start',
  message: ({ written }) => ({
    what: 'Nothing says on which day the vehicle can come in.',
    why: written === undefined ? 'No ready date and no last day for a core can be worked out without it.' : `Ready dates are counted from ${written}, the day it was written, which is usually too early.`,
    instead: 'Write it below, as in start 2026-11-30.',
  }),
  fix: ({ written }, at) => (written === undefined ? undefined : { title: `Add start ${written}`, ...factBelow(at, 'start', written) }),
  example: example({ header: '  written 2026-11-24\n  valid 14 d\n', one: '  labour "Front seal" 2 h\n    because seen\n' }).replace('estimate "E"', '«estimate "E"»'),
};

export const startCheck = wholeCheck(noStart, function* find({ header }) {
  if (header.start === undefined) yield found(noStart, header.at, { written: header.written });
});
