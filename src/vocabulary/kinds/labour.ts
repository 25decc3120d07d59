import { bare, counted, defineKind, led, ledMany, type Kind } from '../kind.js';
import { choice, count, hours, listOf, nameOf, names, percent } from '../values.js';
import { cautionTopics } from '../words.js';
import { after } from './after.js';
import { countsAs } from './counts-as.js';
import { fee } from './fee.js';
import { note } from './note.js';
import { part } from './part.js';
import { sublet } from './sublet.js';

export const takes = defineKind({
  word: 'takes',
  says: 'How long the work takes with a way in; without with, how long it takes in the car. One line for each way in that the work can be done with.',
  example: 'takes 4.5 h with engine-lifted',
  fields: {
    hours: bare(hours, 'The hours.'),
    with: led('with', names('access'), 'The ways in that it takes; all of them, where several are named.'),
  },
});

export const labour = defineKind({
  word: 'labour',
  says: 'Work that the shop does. With a name it stands at the left edge and an option brings it in with do; without one it stands inside an option.',
  example: 'labour pump "Coolant pump: replace"\n  takes 9.0 h\n  takes 4.5 h with engine-lifted\n  takes 1.6 h with engine-out',
  name: 'optional',
  title: 'required',
  fields: {
    count: counted(count, 'How many times it is done; once where nothing is said.'),
    hours: bare(hours, 'The hours, where one line is enough.'),
    with: led('with', names('access'), 'The way in that these hours take.'),
    class: led('class', nameOf(['rate']), 'The class of work; the usual one where nothing is said.'),
    needs: ledMany('needs', names('labour', 'tool'), 'Work that must be done for this one, and special tools it takes.'),
    uses: ledMany('uses', names('part', 'sublet'), 'Parts and outside work that come with it.'),
    after,
    apart: led('apart after', hours, 'Of its hours, how many until things are apart: then outside work can leave, and the rest waits for it and for parts. Without it, outside work leaves as soon as the engine is got at.'),
    done: led('done', choice('first or last', { first: 'Before the customer decides: nothing is opened or ordered yet.', last: 'After everything is put back, such as a road test.' }), 'When it is done, where that is not in between: first, before the customer decides, or last, after everything is put back.'),
    because: ledMany('because', names('finding'), 'The findings it rests on.'),
    caution: ledMany('caution', listOf(choice('a topic of caution', cautionTopics)), 'Topics of caution that go with it, beyond those that follow from what its lines count as: an engine that comes out, coolant, oil, refrigerant.'),
    countsAs,
  },
  // Work may hold chances, and a chance holds work: each names the other when it is asked.
  children: (): readonly Kind[] => [takes, chance, note],
});

export const chance = defineKind({
  word: 'chance',
  says: 'Something that may turn up or go wrong, how likely it is, and below it what it then takes. It belongs to the work, the way in or the option it stands below; a chance below a chance can only happen when that one does, and one of a job or a way in that only chances bring when any of these does. The quote leaves it out, and so do its low and high; the average, the drawn cases and inspections count it. What the option has anyway, or several chances bring, is paid once; a fee is charged each time.',
  example: 'chance cracked "The head is cracked between the seats" 12%\n  part "Bare head casting" 690.00 used arrives 5 d',
  name: 'optional',
  title: 'required',
  titleSays: 'what may happen, in words the customer understands',
  fields: {
    percent: bare(percent, 'How likely it is, in percent.'),
    comeback: bare(choice('comeback', { comeback: 'After the vehicle has left: it comes back, and the way in is paid again.' }), 'Where it happens after the vehicle has left: the way in is then paid again.'),
    do: ledMany('do', names('labour'), 'Work that it then takes.'),
    fit: ledMany('fit', names('part'), 'Parts that it then takes.'),
    send: ledMany('send', names('sublet'), 'Outside work that it then takes.'),
    charge: ledMany('charge', names('fee'), 'Fees that it then brings.'),
  },
  children: (): readonly Kind[] => [labour, part, sublet, fee, chance, note],
});
