import { bare, defineKind, led, ledMany } from '../kind.js';
import { choice, closedDay, hours, listOf, money, percent, runSuchAs, textSuchAs } from '../values.js';
import { headcount } from '../whole-numbers.js';
import { partConditions } from '../words.js';
import { fee } from './fee.js';
import { note } from './note.js';
import { overrun } from './overrun.js';
import { tool } from './tool.js';

export const rate = defineKind({
  word: 'rate',
  says: 'What an hour of one class of work costs the customer. Where a shop has several, one is marked usual.',
  example: 'rate mechanical "Mechanical" 132.00 usual cost 58.00',
  name: 'required',
  title: 'optional',
  fields: {
    price: bare(money, 'Money for one hour.'),
    cost: led('cost', money, 'What the hour costs the shop: for its own margin, never on a quote.'),
    usual: bare(choice('usual', { usual: 'Used for work that names no class.' }), 'Marks the class of work that names none.'),
  },
});

export const markup = defineKind({
  word: 'markup',
  says: 'What the shop adds to a cost. Each line covers costs of one piece up to a figure; the whole cost takes the percentage of its line. Used only where a line gives a cost and not a price.',
  example: 'markup 50% to 250.00',
  fields: {
    percent: bare(percent, 'Added to the cost.'),
    upTo: led('to', money, 'The dearest cost that the line covers; without it, everything dearer.'),
    on: led('on', choice('parts or sublets', { parts: 'Parts and fluids.', sublets: 'Outside work.' }), 'What it is for: parts, or sublets (outside work); parts where nothing is said.'),
  },
});

export const tax = defineKind({
  word: 'tax',
  says: 'A tax, and what it is charged on. This is the writer’s setting, not tax advice: check your local rule.',
  example: 'tax sales "Sales tax" 7.25% on parts, fees by invoice',
  name: 'required',
  title: 'optional',
  fields: {
    percent: bare(percent, 'The rate.'),
    on: led('on', listOf(choice('what is taxed', { parts: 'Parts and fluids.', labour: 'Work of the shop.', sublets: 'Outside work.', fees: 'Supplies, disposal, freight, tow and the like.' })), 'What it is charged on: parts, labour, sublets, fees.'),
    by: led('by', choice('item or invoice', { item: 'Worked out and rounded line by line.', invoice: 'Worked out once, on the sum.' }), 'Whether it is rounded line by line (item) or once on the sum (invoice); invoice where nothing is said.'),
  },
});

export const coreTax = defineKind({
  word: 'core-tax',
  says: 'How a core charge is taxed, by the condition of the part; without such a line it is not taxed. Rules differ from place to place: check your local rule.',
  example: 'core-tax refunded on used, rebuilt',
  fields: {
    policy: bare(choice('kept, refunded or none', { kept: 'The core charge is taxed, and the tax stays paid when the core goes back.', refunded: 'The core charge is taxed, and the tax comes back with it.', none: 'The core charge is not taxed.' }), 'kept, refunded or none.'),
    on: led('on', listOf(choice('conditions', partConditions)), 'The conditions of part it holds for; all of them where nothing is said.'),
  },
});

export const shop = defineKind({
  word: 'shop',
  says: 'What all estimates of a shop share: rates, markup, taxes, fees, the working day and the tools it owns. One for each estimate, usually in a shared file.',
  example: 'shop "Corner Bay Garage"\n  currency USD\n  workday 8 h\n  rate mechanical "Mechanical" 132.00 usual',
  title: 'required',
  titleSays: 'the name on the quote',
  fields: {
    address: ledMany('address', listOf(textSuchAs('12 Mill Lane')), 'Lines of its address, for the head of a quote.'),
    phone: led('phone', textSuchAs('555 0100'), 'Its telephone number, for the head of a quote.'),
    locale: led('locale', runSuchAs('en-GB'), 'How numbers and dates are written on a quote: a language tag of BCP 47, such as en-US or en-GB; en-US where nothing is said.'),
    currency: led('currency', runSuchAs('USD'), 'Three letters of ISO 4217, such as USD; says how many decimals money has.'),
    rounding: led('rounding', choice('a way of rounding', { 'half-up': 'Half a cent goes up: the usual way.', 'half-even': 'Half a cent goes to the even cent.', 'half-down': 'Half a cent goes down.' }), 'How a line is rounded to the smallest coin; half-up where nothing is said.'),
    workday: led('workday', hours, 'Hours that one technician works on one day.'),
    technicians: led('technicians', headcount, 'How many technicians can work on one vehicle at the same time; one where nothing is said.'),
    closed: ledMany('closed', listOf(closedDay), 'Days of the week and dates on which nobody works; saturday and sunday where nothing is said.'),
  },
  children: [rate, markup, tax, coreTax, fee, tool, overrun, note],
});
