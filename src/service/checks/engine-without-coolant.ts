import { swapJob } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: an engine does not come out with its cooling system full. */
export const engineWithoutCoolant = lacking({
  code: 'engine-without-coolant', severity: 'warning', title: 'An engine out without coolant',
  when: lineFor('engine-swap', 'engine-out'),
  topics: ['coolant'],
  line: { kind: 'part', name: 'coolant', title: 'Coolant' },
  what: 'brings no coolant.',
  why: 'The cooling system is drained for it and filled afterwards.',
  instead: 'Add the coolant, or say counts as coolant on the part that has it.',
  example: swapJob('coolant'),
});
