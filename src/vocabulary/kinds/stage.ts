import { defineKind, led, ledMany } from '../kind.js';
import { hours, nameOf, names } from '../values.js';

export const stage = defineKind({
  word: 'stage',
  says: 'Work that is quoted and authorised before the customer decides between the options, such as taking the engine apart to see the damage. Every option then contains it, once. By itself it has a price, and so has putting everything back where the customer stops there.',
  example: 'stage tear-down "Take the front apart to see the damage"\n  do strip-front\n  opens front-off\n  put back 3.5 h\n  destroys head-set, head-bolts',
  name: 'required',
  title: 'required',
  fields: {
    do: ledMany('do', names('labour'), 'Work that is done in it, with the parts and outside work that come along. It is done with what the stage opens, also where an option later opens more.'),
    opens: ledMany('opens', names('access'), 'Ways in that it opens: getting in belongs to the stage; closing up, with the parts and outside work of the way in, to what comes after.'),
    putBack: led('put back', hours, 'Hours to put together again what was taken apart, beyond closing the ways in, where the customer stops there.'),
    class: led('class', nameOf(['rate']), 'The class of that work.'),
    destroys: ledMany('destroys', names('part'), 'Parts that taking apart destroys: putting back takes new ones.'),
  },
});
