import type { Rule } from '../../language/index.js';
import { is, kinds } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const startBeforeWritten: Rule<{ readonly start: string; readonly written: string }> = {
  code: 'start-before-written', family: 'money', severity: 'warning', title: 'Work that starts before it is quoted',
  message: ({ start, written }) => ({
    what: `The work starts on ${start}, and the estimate was written on ${written}.`,
    why: 'Ready dates and last days for cores are counted from the start, so all of them are too early.',
    instead: 'Correct one of the two dates.',
  }),
  fix: ({ written }, at) => ({ title: `Write ${written}`, at, text: written }),
  example: example({ header: '  written 2026-11-24\n  start «2025-11-30»\n  valid 14 d\n', one: '  labour "Front seal" 2 h\n    because seen\n' }),
};

export const orderCheck = wholeCheck(startBeforeWritten, function* find({ header: { start, written, record } }) {
  if (start === undefined || written === undefined || start >= written || !is(record, kinds.estimate)) return;
  yield found(startBeforeWritten, record.values.start?.at ?? record.at, { start, written });
});
