import { example } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice. Forgotten hours are the usual way in which an engine quote goes wrong. */
export const engineWithoutSwap = lacking({
  code: 'engine-without-swap', severity: 'warning', title: 'An engine that nobody fits',
  when: lineFor('used-engine', 'exchange-engine'),
  topics: ['engine-swap'],
  line: { kind: 'labour', name: 'swap', title: 'Swap engine' },
  what: 'is bought, and no work fits it.',
  why: 'The hours of the swap are the larger part of the labour, so the total is far too low.',
  instead: 'Add the work, or say counts as engine-swap on the line that has it.',
  example: example({ one: '  labour "Road test" 1 h\n    because seen\n  «part "Exchange engine" 2900.00 new»\n  part "Kit" 90.00 new counts as coolant\n' }),
});
