import { example } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: the pump behind a timing belt is renewed with it. */
export const beltWithoutPump = lacking({
  code: 'belt-without-pump', severity: 'advice', title: 'A timing belt off without a look at the pump',
  when: lineFor('timing-belt'),
  topics: ['coolant-pump'],
  line: { kind: 'part', name: 'pump', title: 'Coolant pump' },
  what: 'leaves the coolant pump.',
  why: 'Where the belt drives it, a later pump costs the whole way in again.',
  instead: 'Add it, name it behind consider, or allow it where the belt does not drive the pump.',
  example: example({
    lines: '«labour timing "Timing belt: replace" 3 h»\n  because seen\n  uses kit\npart kit "Kit" 90.00 new counts as timing-belt, tensioner\n',
    one: '  do timing\n',
  }),
});
