import { bare, defineKind, led } from '../kind.js';
import { money, percent } from '../values.js';

export const overrun = defineKind({
  word: 'overrun',
  says: 'How far work may run over what was authorised before the customer must be asked again: a percentage, an amount, or a percentage with a least and a most. Where nothing is said, whatever is above what was authorised must be asked. Rules differ from place to place: check your local rule on written estimates and authorisation.',
  example: 'overrun 10% at least 10.00 at most 50.00',
  fields: {
    percent: bare(percent, 'The percentage of what was authorised.'),
    fixed: bare(money, 'An amount instead of a percentage.'),
    atLeast: led('at least', money, 'The room there is even where the percentage comes to less.'),
    atMost: led('at most', money, 'The room there is even where the percentage comes to more.'),
  },
});
