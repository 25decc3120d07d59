import { example } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: the tensioner is renewed with the chain or belt it tightens. */
export const timingWithoutTensioner = lacking({
  code: 'timing-without-tensioner', severity: 'advice', title: 'A timing drive off without a tensioner',
  when: lineFor('timing-belt', 'timing-chain'),
  topics: ['tensioner'],
  line: { kind: 'part', name: 'tensioner', title: 'Tensioner' },
  what: 'leaves the old tensioner.',
  why: 'It is in reach now and costs little; one that fails takes the valves with it.',
  instead: 'Add it, or say counts as tensioner on the kit that has it.',
  example: example({
    lines: '«labour timing "Timing chain: replace" 3 h»\n  because seen\n  uses kit\npart kit "Kit" 90.00 new counts as timing-chain\n',
    one: '  do timing\n',
  }),
});
