import { badValves } from './bad-valves.js';
import { headJob } from './example.js';
import { lacking } from './lacking.js';

/** Common practice: where valves are bent or burnt the seats are recut. */
export const valvesWithoutSeats = lacking({
  code: 'valves-without-seats', severity: 'warning', title: 'New valves on old seats',
  when: badValves,
  topics: ['valve-seats'],
  line: { kind: 'sublet', name: 'valve-seats', title: 'Valve seats: recut' },
  what: 'has damaged valves, and nothing recuts the seats.',
  why: 'A new valve on a seat that was struck or burnt does not seal, so replacing valves alone is no repair.',
  instead: 'Add the seats, or say counts as valve-seats on the line that has them.',
  example: headJob('valve-seats', ['valves', 'valve-seats', 'stem-seals']),
});
