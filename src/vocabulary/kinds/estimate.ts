import { defineKind, led } from '../kind.js';
import { calendarWait, date, percent, workingWait } from '../values.js';
import { headcount } from '../whole-numbers.js';

export const estimate = defineKind({
  word: 'estimate',
  says: 'What this estimate is called, its dates, and what holds for this job: technicians, the customer’s answer, interest.',
  example: 'estimate "E-1041 Cylinder 4 has no compression"\n  written 2026-11-24\n  start 2026-11-30\n  valid 14 d\n  answer 1 d\n  interest 6%',
  title: 'required',
  titleSays: 'how the shop finds it again',
  fields: {
    written: led('written', date, 'The day it was written.'),
    start: led('start', date, 'The day on which the vehicle can come in; ready dates are counted from it.'),
    valid: led('valid', calendarWait, 'How long the prices hold, by the calendar.'),
    answer: led('answer', workingWait, 'How long the customer takes to say yes, in working days: before that nothing is ordered and nothing opened.'),
    technicians: led('technicians', headcount, 'How many technicians work on this vehicle; as many as the shop says where nothing is said.'),
    interest: led('interest', percent, 'Interest for a year, for what an option costs in each month of its service: a twelfth of it counts in each. None where nothing is said.'),
  },
});
