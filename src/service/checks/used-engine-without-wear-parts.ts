import { usedEngine } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: a used engine gets the cheap wear parts while it is on the stand. */
export const usedEngineWithoutWearParts = lacking({
  code: 'used-engine-without-wear-parts', severity: 'advice', title: 'A used engine without new wear parts',
  when: lineFor('used-engine'),
  topics: ['wear-parts', 'coolant-pump', 'timing-belt', 'tensioner'],
  line: { kind: 'part', name: 'wear-parts', title: 'Seals and gaskets for the stand' },
  what: 'goes in with all its old seals and wear parts.',
  why: 'They cost little while the engine is on the stand, and a whole way in later.',
  instead: 'Add them, or say counts as wear-parts on the part that has them.',
  example: usedEngine('wear-parts'),
});
