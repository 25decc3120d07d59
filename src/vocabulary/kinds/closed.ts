import { bare, defineKind, led } from '../kind.js';
import { date, hours, money, nameOf } from '../values.js';
import { note } from './note.js';

const TITLE_SAYS = 'the title of the line, where it has no name';

export const clocked = defineKind({
  word: 'clocked',
  says: 'The hours that were really clocked on one line, all together. Work is meant by its name; a way in by its name, for opening and closing it; a line without a name by its title.',
  example: 'clocked pump 2.1 h',
  title: 'optional',
  titleSays: TITLE_SAYS,
  fields: {
    line: bare(nameOf(['labour', 'access']), 'The work, or the way in.'),
    hours: bare(hours, 'The hours, one figure.'),
  },
});

export const paid = defineKind({
  word: 'paid',
  says: 'What the shop really paid for one line, all together and without tax that it gets back. The line is meant by its name, or by its title where it has no name.',
  example: 'paid "Used engine, 92 000 mi" 1290.00',
  title: 'optional',
  titleSays: TITLE_SAYS,
  fields: {
    line: bare(nameOf(['part', 'sublet', 'fee']), 'The part, outside work or fee.'),
    amount: bare(money, 'The money, one figure.'),
  },
});

export const credited = defineKind({
  word: 'credited',
  says: 'The core money that was really received for an old unit. The part is meant by its name, or by its title where it has no name.',
  example: 'credited "Used engine, 92 000 mi" 150.00',
  title: 'optional',
  titleSays: TITLE_SAYS,
  fields: {
    line: bare(nameOf(['part']), 'The part that the core belongs to.'),
    amount: bare(money, 'The money, one figure.'),
  },
});

export const closed = defineKind({
  word: 'closed',
  says: 'The job is over: which option was done, when, and below it what it really took. Without for, nothing was done. No quoted figure is made from it; the closing and the shop’s own book of times are.',
  example: 'closed for used on 2026-12-09\n  billed 5102.20\n  clocked "Dress and swap the engine" 6.1 h\n  paid "Used engine, 92 000 mi" 1290.00',
  fields: {
    for: led('for', nameOf(['option']), 'The option that was done.'),
    on: led('on', date, 'The day on which the vehicle left.'),
    billed: led('billed', money, 'What the customer was billed, tax included.'),
  },
  children: [clocked, paid, credited, note],
});
