import { bare, counted, defineKind, led, ledMany } from '../kind.js';
import { choice, count, hours, listOf, nameOf, names } from '../values.js';
import { cautionTopics } from '../words.js';
import { countsAs } from './counts-as.js';
import { note } from './note.js';

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
    because: ledMany('because', names('finding'), 'The findings it rests on.'),
    caution: ledMany('caution', listOf(choice('a topic of caution', cautionTopics)), 'Topics of caution that go with it.'),
    countsAs,
  },
  children: [takes, note],
});
