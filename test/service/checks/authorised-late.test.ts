import { describe, expect, test } from 'vitest';
import { serviceOver, uriOf } from '../../support/fixture.js';

// Common practice: an offer is accepted while it holds; what is agreed after work began raises it, whatever the day.

const THIS = 'this.yard';
const HEAD = 'steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\n  tax sales 7% on parts\nestimate "E"\n  written 2026-11-02\n  start 2026-11-30\n  valid 28 d\nfinding seen "Seen"\noption one "Mend it"\n  warranty 12 mo\n  labour "Front seal" 2 h\n    because seen\noption stop "Stop"\n  worth 10.00\n';

function told(lines: string, head = HEAD): readonly string[] {
  const text = head + lines;
  const { service } = serviceOver({ [THIS]: text });
  return service.diagnostics(uriOf(THIS)).filter(({ code }) => code === 'authorised-late' || code === 'day-far-off').map(({ code, range, message }) => `${code} ${text.slice(range.start, range.end)}: ${message.what}`);
}

describe('the day of an authorisation', () => {
  test('after the last day of the offer is told at the day', () => {
    expect(told('authorised 200.00 for one on 2026-11-30\n')).toEqual([]); // 28 days from Monday the 2nd on
    expect(told('authorised 200.00 for one on 2026-12-01\n')).toEqual(['authorised-late 2026-12-01: This was authorised on 2026-12-01; the prices written on 2026-11-02 held until 2026-11-30.']);
  });

  test('counts from the last quote before it, for that option', () => {
    expect(told('quoted 200.00 for one on 2026-11-20\nauthorised 200.00 for one on 2026-12-18\n')).toEqual([]);
    expect(told('quoted 200.00 for one on 2026-11-20\nauthorised 200.00 for one on 2026-12-19\n')).toEqual(['authorised-late 2026-12-19: This was authorised on 2026-12-19; the prices quoted on 2026-11-20 held until 2026-12-18.']);
    expect(told('quoted 10.00 for stop on 2026-11-20\nauthorised 200.00 for one on 2026-12-18\n')).toHaveLength(1);
    expect(told('quoted 200.00 for one on 2026-12-20\nauthorised 200.00 for one on 2026-12-18\n')).toHaveLength(1);
  });

  test('of what was raised later is not held against the offer', () => {
    expect(told('authorised 250.00 for one on 2026-12-18\nauthorised 200.00 for one on 2026-11-20\n')).toEqual([]);
  });

  test('is not asked for where nothing says how long the prices hold', () => {
    expect(told('authorised 200.00 for one on 2026-12-18\n', HEAD.replace('  valid 28 d\n', ''))).toEqual([]);
  });

  test('of another year is told once, as that', () => {
    expect(told('authorised 200.00 for one on 2062-11-20\n')).toEqual(['day-far-off 2062-11-20: This says 2062-11-20, more than a year after the estimate was written on 2026-11-02.']);
    expect(told('quoted 200.00 for one on 2027-11-02\n')).toEqual([]);
    expect(told('quoted 200.00 for one on 2027-11-03\n')).toHaveLength(1);
    expect(told('authorised 200.00 for one on 2026-11-20\nstarted on 2062-11-30\n')).toEqual(['day-far-off 2062-11-30: This says 2062-11-30, more than a year after the estimate was written on 2026-11-02.']);
  });
});
