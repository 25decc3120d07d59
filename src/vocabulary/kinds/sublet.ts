import { bare, counted, defineKind, led, ledMany } from '../kind.js';
import { calendarWait, money, names, quantity, workingWait } from '../values.js';
import { after } from './after.js';
import { countsAs } from './counts-as.js';
import { note } from './note.js';

export const sublet = defineKind({
  word: 'sublet',
  says: 'Outside work, such as machining, priced by the piece. The customer is told that it is done elsewhere.',
  example: 'sublet head-work "Valves, guides, seats, faces, pressure test" 12 at cost 31.00 back in 4 d',
  name: 'optional',
  title: 'required',
  fields: {
    quantity: counted(quantity, 'How many pieces; one where nothing is said.'),
    price: bare(money, 'The price of one piece.'),
    cost: led('cost', money, 'What one piece costs the shop; the markup on sublets makes the price.'),
    backIn: led('back in', workingWait, 'How long it is away, in working days.'),
    after,
    warranty: led('warranty', calendarWait, 'How long it is warranted.'),
    because: ledMany('because', names('finding'), 'The findings it rests on.'),
    countsAs,
  },
  children: [note],
});
