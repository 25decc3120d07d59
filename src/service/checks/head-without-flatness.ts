import { headJob } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: the gasket face is checked before it goes back; limits differ by maker. */
export const headWithoutFlatness = lacking({
  code: 'head-without-flatness', severity: 'warning', title: 'A head off without a flatness check',
  when: lineFor('head-off'),
  topics: ['flatness-check'],
  line: { kind: 'sublet', name: 'head-face', title: 'Head: check for flatness, reface' },
  what: 'has no check of the gasket face for flatness.',
  why: 'A new gasket on a warped face leaks again, at the shop’s cost.',
  instead: 'Add the check, or say counts as flatness-check on the line that has it.',
  example: headJob('flatness-check'),
});
