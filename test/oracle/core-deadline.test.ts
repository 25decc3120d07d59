import { describe, expect, it } from 'vitest';
import { told, texts } from './told.js';

/** An exchange part that arrives four working days after it is ordered; its core is due a week by the calendar after that. */
const core = (answer: string) => {
  const [one] = told(texts(`steelyard 1\nshop "S"\n  rate bench 100.00\nestimate "E"\n  start 2026-11-30\n${answer}option one "One"\n  labour "W" 4 h\n  part "P" 500.00 rebuilt arrives 4 d\n    core 200.00 due 7 d\n`)).options;
  return { ready: one?.calendar.ready, deadline: one?.cores[0]?.deadline, refund: one?.cores[0]?.refund.likely };
};

describe('the last day of a core counts from the day on which the part arrives (by hand)', () => {
  it('where it is ordered at the start', () => {
    // Monday 30 November and four working days: Friday 4 December. A week later is the 11th.
    expect(core('')).toEqual({ ready: '2026-12-04', deadline: '2026-12-11', refund: '200.00' });
  });

  it('where the customer’s answer is waited for first', () => {
    // Ten working days: Monday 14 December. Four more: Friday 18 December, on which the work is done. A week later is the 25th.
    expect(core('  answer 10 d\n')).toEqual({ ready: '2026-12-18', deadline: '2026-12-25', refund: '200.00' });
  });
});
