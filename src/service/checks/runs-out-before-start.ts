import type { Rule } from '../../language/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const DAYS: Readonly<{ [unit: string]: number }> = { d: 1, wk: 7, mo: 31 };

const runsOutBeforeStart: Rule<{ readonly start: string }> = {
  code: 'runs-out-before-start', family: 'money', severity: 'advice', title: 'Prices that run out before the work starts',
  message: ({ start }) => ({
    what: `These prices have run out when the work starts on ${start}.`,
    why: 'The customer agrees to one price, and the parts are bought at another.',
    instead: 'Write a longer time behind valid, or an earlier start.',
  }),
  example: example({ header: '  written 2026-11-02\n  start 2026-11-30\n  valid «14 d»\n', one: '  labour "Front seal" 2 h\n    because seen\n' }),
};

export const runsOutCheck = wholeCheck(runsOutBeforeStart, function* find({ header: { start, written, valid } }) {
  if (start === undefined || written === undefined || valid === undefined || valid.likely.lt(1)) return;
  const days = (Date.parse(start) - Date.parse(written)) / 86_400_000;
  if (valid.likely.times(DAYS[valid.unit?.word ?? 'd'] ?? 1).lt(days)) yield found(runsOutBeforeStart, valid.at, { start });
});
