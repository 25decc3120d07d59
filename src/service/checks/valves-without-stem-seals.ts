import { badValves } from './bad-valves.js';
import { headJob } from './example.js';
import { lacking } from './lacking.js';

/** Common practice: stem seals are new whenever the valves were out. */
export const valvesWithoutStemSeals = lacking({
  code: 'valves-without-stem-seals', severity: 'warning', title: 'New valves with old stem seals',
  when: badValves,
  topics: ['stem-seals'],
  line: { kind: 'part', name: 'stem-seals', title: 'Valve stem seals' },
  what: 'has damaged valves, and brings no new stem seals.',
  why: 'The seals are spoiled when the valves come out; old ones let oil into the cylinders.',
  instead: 'Add them, or say counts as stem-seals on the set that has them.',
  example: headJob('stem-seals', ['valves', 'valve-seats', 'stem-seals']),
});
