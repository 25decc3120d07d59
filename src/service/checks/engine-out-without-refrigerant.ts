import { example } from './example.js';
import { lacking, lineFor } from './lacking.js';
import { is, kinds } from '../../vocabulary/index.js';
import type { Resolved } from '../../estimate/index.js';

/** Common practice, asked only where the vehicle is said to hold refrigerant. */
export const engineOutWithoutRefrigerant = lacking({
  code: 'engine-out-without-refrigerant', severity: 'warning', title: 'An engine out, and nothing about its refrigerant',
  when: (one, { resolved }) => (holdsRefrigerant(resolved) ? lineFor('engine-out')(one) : undefined),
  topics: ['refrigerant'],
  line: { kind: 'sublet', name: 'refrigerant', title: 'Refrigerant: recover and refill' },
  what: 'has nothing for the refrigerant that the vehicle holds.',
  why: 'It has to be recovered before the lines are opened, by certified people where the law says so: check your local rule.',
  instead: 'Add that work, or say counts as refrigerant on the line that has it.',
  example: example({
    lines: 'vehicle "Van"\n  refrigerant yes\n«access out "Engine lifted out"»\n  remove 6 h\n  refit 7 h\n  caution lifting, fuel\npart coolant "Coolant" 40.00 new\nlabour seal "Rear seal" 2 h with out\n  because seen\n  uses coolant\n',
    one: '  do seal\n',
  }),
});

function holdsRefrigerant({ estimate }: Resolved): boolean {
  const record = estimate.vehicle?.record;
  return record !== undefined && is(record, kinds.vehicle) && record.values.refrigerant?.word === 'yes';
}
