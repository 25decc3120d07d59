import { usedEngine } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: a used engine is accepted only after its own checks. */
export const usedEngineWithoutCheck = lacking({
  code: 'used-engine-without-check', severity: 'warning', title: 'A used engine without a check before fitting',
  when: lineFor('used-engine'),
  topics: ['acceptance-check'],
  line: { kind: 'labour', name: 'accept', title: 'Used engine: compression and borescope before fitting' },
  what: 'is fitted without being looked over first.',
  why: 'One of unknown history may have the same fault, and a supplier seldom pays for the swap a second time.',
  instead: 'Add compression or leakage, borescope and build date as work, or say counts as acceptance-check on it.',
  example: usedEngine('acceptance-check'),
});
