import { bare, defineKind, led, ledMany } from '../kind.js';
import { calendarWait, choice, date, distance, listOf, monthOrDate, names, textSuchAs } from '../values.js';
import { year } from '../whole-numbers.js';
import { note } from './note.js';

export const coverage = defineKind({
  word: 'coverage',
  says: 'A recall, service campaign, bulletin or extended warranty that may pay for this failure. What it says of itself is held against the vehicle: covered, not covered or unknown.',
  example: 'coverage guides "Extended warranty on valve guides" extended-warranty\n  built from 2012-06\n  built to 2013-02\n  up to 150000 mi\n  within 120 mo\n  from "letter to owners"',
  name: 'optional',
  title: 'required',
  titleSays: 'what it is',
  fields: {
    sort: bare(choice('the sort of coverage', {
      recall: 'A recall: usually free of charge, whatever the age.',
      campaign: 'A service campaign of the maker.',
      bulletin: 'A bulletin: how to mend it; by itself it pays nothing.',
      'extended-warranty': 'A warranty that was extended for this failure.',
    }), 'What sort of coverage it is.'),
    builtFrom: led('built from', monthOrDate, 'The first month or day of building that it holds for.'),
    builtTo: led('built to', monthOrDate, 'The last month or day of building that it holds for.'),
    years: ledMany('years', listOf(year), 'The model years that it holds for.'),
    upTo: led('up to', distance, 'The most that the odometer may show.'),
    within: led('within', calendarWait, 'How long after building it holds, by the calendar.'),
    until: led('until', date, 'The last day on which it can be claimed.'),
    covers: ledMany('covers', names('labour', 'option'), 'The work or options that it would pay for; the whole failure where nothing is said.'),
    from: led('from', textSuchAs('letter to owners'), 'Where this was read.'),
  },
  children: [note],
});
