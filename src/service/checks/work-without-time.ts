import { Places, type Rule } from '../../language/index.js';
import type { Labour, Mode } from '../../estimate/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

const workWithoutTime: Rule<{ readonly work: string }> = {
  code: 'work-without-time', family: 'money', severity: 'warning', title: 'Work that takes no time',
  message: ({ work }) => ({
    what: `“${clip(work)}” takes 0 h in the car.`,
    why: 'It is charged at nothing, and no way in is weighed against it; hours of 0 were probably typed to be filled in later.',
    instead: 'Write the hours. What takes no time of its own once a way in is open says so with it, as in takes 0 h with engine-lifted.',
  }),
  example: example({ one: '  labour "Rear seal" «0 h»\n    because seen\n  labour "Front seal" 2 h\n    because seen\n' }),
};

/** An option whose whole total is nothing has its own message. */
export const timeCheck = optionCheck(workWithoutTime, function* find({ weighed, option, placeOf }) {
  if (weighed.totals.total.likely.lte(0)) return;
  for (const { record, title, modes } of timeless.itemsIn(option.labour, option.record)) {
    for (const { hours } of modes.filter(isTimeless)) yield found(workWithoutTime, placeOf({ record, at: hours.at, broken: false }), { work: title });
  }
});

const timeless = new Places<Labour>(({ modes }) => modes.some(isTimeless));

function isTimeless({ with: ways, hours }: Mode): boolean {
  return ways.length === 0 && hours.high.isZero();
}
