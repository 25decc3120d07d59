import { swapJob } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: oil and filter are renewed together. */
export const engineWithoutFilter = lacking({
  code: 'engine-without-filter', severity: 'warning', title: 'An engine or a head fitted without an oil filter',
  when: lineFor('engine-swap', 'head-off'),
  topics: ['oil-filter'],
  line: { kind: 'part', name: 'oil-filter', title: 'Oil filter' },
  what: 'brings no oil filter.',
  why: 'New oil goes in with a new filter; the old one holds what wore off the old engine.',
  instead: 'Add the filter, or say counts as oil-filter on the part that has it.',
  example: swapJob('oil-filter'),
});
