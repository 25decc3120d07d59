import { bare, counted, defineKind, led, ledMany } from '../kind.js';
import { calendarWait, choice, hours, money, nameOf, names, quantity, textSuchAs, workingWait } from '../values.js';
import { partConditions } from '../words.js';
import { countsAs } from './counts-as.js';
import { note } from './note.js';

export const keeps = defineKind({
  word: 'keeps',
  says: 'A piece that the shop or the customer keeps back from the core, and what the refund loses by it.',
  example: 'keeps "Oil filter housing" less 40.00 worth 85.00',
  title: 'required',
  titleSays: 'the piece that is kept',
  fields: {
    less: led('less', money, 'What the refund is reduced by.'),
    worth: led('worth', money, 'What the piece is worth to the one who keeps it.'),
  },
});

export const core = defineKind({
  word: 'core',
  says: 'The charge for the old unit: paid now, and refunded when the old unit goes back complete, assembled and in time. Behind 2 at and the like the charge is for each piece; less, keeps, worth and assemble are for all of them together. Without a core-tax line in the shop it is not taxed.',
  example: 'core 600.00 due 30 d\n  assemble 1.5 h\n  keeps "Oil filter housing" less 40.00',
  fields: {
    charge: bare(money, 'The core charge for one piece.'),
    due: led('due', calendarWait, 'How long after the part arrives the core must be back, by the calendar.'),
    less: led('less', money, 'What the refund loses because the old unit is damaged or incomplete.'),
    assemble: led('assemble', hours, 'Work to put the old unit together again; charged as labour.'),
    class: led('class', nameOf(['rate']), 'The class of that work.'),
  },
  children: [keeps],
});

export const part = defineKind({
  word: 'part',
  says: 'A part, fluid or consumable. It has a price, or a cost that the shop’s markup turns into a price. A job that uses it brings it along; it is charged once in an option however many jobs use it.',
  example: 'part head-bolts "Head bolts, tightened to yield" 8 at 5.85 new arrives 2 d',
  name: 'optional',
  title: 'required',
  fields: {
    quantity: counted(quantity, 'How many or how much; one where nothing is said.'),
    price: bare(money, 'The price of one.'),
    cost: led('cost', money, 'What one costs the shop; the markup table makes the price.'),
    condition: bare(choice('the condition', partConditions), 'new, aftermarket, rebuilt, used or customer-supplied.'),
    arrives: led('arrives', workingWait, 'How long after ordering it is there, in working days.'),
    warranty: led('warranty', calendarWait, 'How long it is warranted.'),
    from: led('from', textSuchAs('salvage yard, with its history'), 'Where it comes from.'),
    because: ledMany('because', names('finding'), 'The findings it rests on.'),
    countsAs,
  },
  children: [core, note],
});
