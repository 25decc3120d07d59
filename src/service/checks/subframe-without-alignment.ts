import { example } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: the wheels are aligned after a subframe was down. */
export const subframeWithoutAlignment = lacking({
  code: 'subframe-without-alignment', severity: 'advice', title: 'A subframe lowered without an alignment',
  when: lineFor('subframe-lowered'),
  topics: ['wheel-alignment'],
  line: { kind: 'sublet', name: 'alignment', title: 'Wheel alignment' },
  what: 'has no wheel alignment afterwards.',
  why: 'A subframe seldom goes back to the same place within what the wheels need.',
  instead: 'Add the alignment, or allow it where the subframe is pinned in its place.',
  example: example({
    lines: '«access out "Engine and gearbox lowered on the subframe"»\n  remove 6 h\n  refit 7 h\n  caution lifting, fuel\npart coolant "Coolant" 40.00 new\nlabour seal "Rear seal" 2 h with out\n  because seen\n  uses coolant\n',
    one: '  do seal\n',
  }),
});
