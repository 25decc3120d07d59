import { bare, defineKind, led, ledMany } from '../kind.js';
import { calendarWait, choice, listOf, money, nameOf, names, textSuchAs } from '../values.js';
import { cautionTopics } from '../words.js';
import { fee } from './fee.js';
import { chance, labour } from './labour.js';
import { note } from './note.js';
import { part } from './part.js';
import { sublet } from './sublet.js';

export const harvest = defineKind({
  word: 'harvest',
  says: 'A piece that is taken off the old engine because it is worth something, at the value the writer gives it.',
  example: 'harvest "Alternator" 85.00',
  title: 'required',
  titleSays: 'the piece',
  fields: { value: bare(money, 'What it is worth.') },
});

export const option = defineKind({
  word: 'option',
  says: 'One way out: rebuild, used engine, exchange engine, or stop. The comparison shows them side by side.',
  example: 'option used "Fit a used engine"\n  warranty 3 mo\n  lasts 36 mo\n  resale 2600.00\n  labour "Dress and swap the engine" 4.5 / 5.5 / 8 h\n  part "Used engine, 92 000 mi" 1650 used arrives 3 d',
  name: 'required',
  title: 'required',
  fields: {
    do: ledMany('do', names('labour'), 'Work that it takes, with the parts and outside work that come along.'),
    fit: ledMany('fit', names('part'), 'Parts that no job brings along.'),
    send: ledMany('send', names('sublet'), 'Outside work that no job brings along.'),
    charge: ledMany('charge', names('fee'), 'What it charges beside work and goods, such as a tow.'),
    way: led('way', listOf(nameOf(['access'], { 'in-car': 'With the engine in its place.' })), 'Pins the way in: only these are used, with what they include, even if another is cheaper. in-car pins the engine in its place.'),
    worth: led('worth', money, 'What the vehicle is worth after it, where that differs.'),
    warranty: led('warranty', calendarWait, 'How long the shop warrants it.'),
    lasts: led('lasts', calendarWait, 'How long the vehicle is expected to serve after it; for what it costs in each month.'),
    resale: led('resale', money, 'What the vehicle is expected to bring at the end of that service.'),
    leavesOut: ledMany('leaves out', listOf(textSuchAs('Turbocharger')), 'What the customer might expect and does not get for it; told on the quote.'),
    caution: ledMany('caution', listOf(choice('a topic of caution', cautionTopics)), 'Topics of caution that go with it, beyond those that follow from what its lines count as: an engine that comes out, coolant, oil, refrigerant.'),
    because: ledMany('because', names('finding'), 'The findings it rests on.'),
  },
  children: [labour, part, sublet, fee, harvest, chance, note],
});
