import { example } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice. A part of the option itself, so that each option can have another one. */
export const swapWithoutEngine = lacking({
  code: 'swap-without-engine', severity: 'warning', title: 'An engine swap without an engine',
  when: lineFor('engine-swap'),
  topics: ['used-engine', 'exchange-engine'],
  line: { kind: 'part', name: 'engine', title: 'Used engine' },
  what: 'has no engine to fit.',
  why: 'The engine is the dearest part of a swap, so the total is far too low.',
  instead: 'Add the engine as a part of the option, customer-supplied if need be, or say counts as used-engine on it.',
  example: example({ lines: '«labour swap "Swap engine" 6 h»\n  because seen\n  uses set\npart set "What a swap takes" 120.00 new counts as coolant, engine-oil, oil-filter\n', one: '  do swap\n' }),
});
