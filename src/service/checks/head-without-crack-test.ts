import { headJob } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: a head that is off is tested for cracks, by pressure or by dye. */
export const headWithoutCrackTest = lacking({
  code: 'head-without-crack-test', severity: 'warning', title: 'A head off without a crack test',
  when: lineFor('head-off'),
  topics: ['crack-check'],
  line: { kind: 'sublet', name: 'head-test', title: 'Head: test for cracks' },
  what: 'has no test of the head for cracks.',
  why: 'A head that ran hot may be cracked where nobody sees it, and then all of the work is done twice.',
  instead: 'Add the test, or say counts as crack-check on the line that has it.',
  example: headJob('crack-check'),
});
