import { bare, defineKind, led } from '../kind.js';
import { hours, money, nameOf, percent } from '../values.js';
import { note } from './note.js';

export const finds = defineKind({
  word: 'finds',
  says: 'A chance that an inspection tells apart, and how well: how often it shows it where it is there, and how often wrongly where it is not.',
  example: 'finds cracked 90% wrongly 5%',
  fields: {
    chance: bare(nameOf(['chance']), 'The chance that it looks for.'),
    shows: bare(percent, 'How often it shows it where it is there.'),
    wrongly: led('wrongly', percent, 'How often it shows it where it is not there; never where nothing is said.'),
  },
});

export const inspect = defineKind({
  word: 'inspect',
  says: 'A look or a test that could be done before deciding. Its price counts with tax, without the shop’s percentage fees. Whether it is worth that follows from the chances it tells apart, up to six.',
  example: 'inspect dye-test "Dye and pressure test before deciding" 95.00 0.6 h\n  finds cracked 90% wrongly 5%',
  name: 'required',
  title: 'required',
  titleSays: 'the inspection in words',
  fields: {
    price: bare(money, 'What it costs the customer, beside the hours.'),
    hours: bare(hours, 'The hours it takes.'),
    class: led('class', nameOf(['rate']), 'The class of that work.'),
  },
  children: [finds, note],
});
