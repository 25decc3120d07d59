import { swapJob } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice. Lowering an engine for other work leaves its oil in, so it does not call for oil. */
export const engineWithoutOil = lacking({
  code: 'engine-without-oil', severity: 'warning', title: 'An engine or a head fitted without new oil',
  when: lineFor('engine-swap', 'head-off'),
  topics: ['engine-oil'],
  line: { kind: 'part', name: 'engine-oil', title: 'Engine oil' },
  what: 'brings no engine oil.',
  why: 'The engine is filled again after it; with a head off, coolant gets into the old oil.',
  instead: 'Add the oil, or say counts as engine-oil on the part that has it.',
  example: swapJob('engine-oil'),
});
