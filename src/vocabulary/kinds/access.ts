import { defineKind, led, ledMany } from '../kind.js';
import { choice, hours, listOf, nameOf, names } from '../values.js';
import { cautionTopics } from '../words.js';
import { countsAs } from './counts-as.js';
import { chance } from './labour.js';
import { note } from './note.js';
import { part } from './part.js';
import { sublet } from './sublet.js';

export const access = defineKind({
  word: 'access',
  says: 'A way in: what it takes to get at the work and to put everything back. Paid once in an option, shared by all work that needs it.',
  example: 'access engine-out "Engine and gearbox lowered on the subframe"\n  remove 6.0 / 6.5 / 8.0 h\n  refit 6.5 / 7.5 / 10.0 h\n  caution lifting, refrigerant',
  name: 'required',
  title: 'required',
  fields: {
    includes: ledMany('includes', names('access'), 'Ways in that this one gives as well, without paying for them.'),
    remove: led('remove', hours, 'Work to get in.'),
    refit: led('refit', hours, 'Work to put it back.'),
    class: led('class', nameOf(['rate']), 'The class of that work.'),
    needs: ledMany('needs', names('tool'), 'Special tools that it takes.'),
    uses: ledMany('uses', names('part', 'sublet'), 'Parts and outside work that come with it; what the work brings along too is charged once.'),
    caution: ledMany('caution', listOf(choice('a topic of caution', cautionTopics)), 'Topics of caution that go with it, beyond those that follow from what its lines count as: an engine that comes out, coolant, oil, refrigerant.'),
    countsAs,
  },
  children: [part, sublet, chance, note],
});
