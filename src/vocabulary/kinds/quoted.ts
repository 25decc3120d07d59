import { bare, defineKind, led } from '../kind.js';
import { date, money, nameOf } from '../values.js';

export const quoted = defineKind({
  word: 'quoted',
  says: 'What the customer was given to read: the amount, the option it was for, and the day. May stand several times.',
  example: 'quoted 5858.59 for used on 2026-11-24',
  fields: {
    amount: bare(money, 'The total that was quoted, tax included.'),
    for: led('for', nameOf(['option', 'stage']), 'The option or stage it was for; the only option where there is one.'),
    on: led('on', date, 'The day on which the customer got it.'),
  },
});
