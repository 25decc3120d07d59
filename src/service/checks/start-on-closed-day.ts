import type { Rule } from '../../language/index.js';
import { is, kinds } from '../../vocabulary/index.js';
import { calendar } from '../../weigh/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const startOnClosedDay: Rule<{ readonly start: string; readonly opens: string }> = {
  code: 'start-on-closed-day', family: 'job', severity: 'advice', title: 'Work that starts while the shop is closed',
  message: ({ start, opens }) => ({
    what: `The shop is closed on ${start}.`,
    why: `The work is planned from ${opens}, the next day on which it is open, and the customer may stand before a locked door.`,
    instead: `Write start ${opens}, or correct what the shop says behind closed.`,
  }),
  fix: ({ opens }, at) => ({ title: `Write ${opens}`, at, text: opens }),
  example: example({ header: '  start «2026-11-29»\n  valid 14 d\n', one: '  labour "Front seal" 2 h\n    because seen\n' }),
};

/** A start before the day of writing is told first: that date is wrong anyway. */
export const closedStartCheck = wholeCheck(startOnClosedDay, function* find({ header: { start, written, record }, estimate: { shop } }) {
  const day = start === undefined ? undefined : calendar.dayOf(start);
  if (start === undefined || day === undefined || (written !== undefined && start < written) || calendar.isOpen(day, shop) || !is(record, kinds.estimate)) return;
  const opens = calendar.workingDayAfter(day, 0, shop);
  if (opens !== undefined) yield found(startOnClosedDay, record.values.start?.at ?? record.at, { start, opens: calendar.isoOf(opens) });
});
