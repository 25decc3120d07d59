import { bare, counted, defineKind, led } from '../kind.js';
import { choice, listOf, money, percent, quantity } from '../values.js';
import { countsAs } from './counts-as.js';

export const fee = defineKind({
  word: 'fee',
  says: 'A charge that is neither part nor work: supplies, disposal, freight, tow, storage. Below shop it is charged on every option that has labour; with a name at the left edge an option brings it in with charge.',
  example: 'fee supplies "Shop supplies" 5% of labour cap 45.00',
  name: 'optional',
  title: 'required',
  fields: {
    quantity: counted(quantity, 'How many, such as the days in 3 d at 25.00.'),
    price: bare(money, 'The amount, for one where there are several.'),
    percent: bare(percent, 'A percentage instead of an amount.'),
    of: led('of', listOf(choice('what it is a percentage of', { labour: 'The work.', parts: 'The parts.', sublets: 'The outside work.' })), 'What the percentage is of: labour, parts, sublets.'),
    cap: led('cap', money, 'The most that is charged.'),
    countsAs,
  },
});
