import { bare, defineKind, led } from '../kind.js';
import { choice, date, money, nameOf, textSuchAs } from '../values.js';

export const authorised = defineKind({
  word: 'authorised',
  says: 'What the customer agreed to: the total, the option it is for, the day, by whom and how. Of several for one option the latest holds, with the whole amount: it is the revised total, not an addition.',
  example: 'authorised 5858.59 for used on 2026-11-25 by "the owner" phone\n  version "3fa91c2"',
  fields: {
    amount: bare(money, 'The total that was authorised, tax included.'),
    for: led('for', nameOf(['option', 'stage']), 'The option or stage it is for; the only option where there is one.'),
    on: led('on', date, 'The day on which the customer agreed.'),
    by: led('by', textSuchAs('the owner'), 'Who agreed.'),
    how: bare(choice('how the customer agreed', {
      'in-person': 'Spoken, face to face.',
      phone: 'Spoken, on the telephone.',
      message: 'A text message.',
      email: 'An electronic letter.',
      signed: 'A signature on paper or on a screen.',
    }), 'How it was said: in-person, phone, message, email or signed.'),
    version: led('version', textSuchAs('3fa91c2'), 'The version of the estimate that the customer agreed to: a revision of the repository, or the shop’s own word for it.'),
  },
});
