/**
 * Every line of an estimate and every slot of it: which answers it moves, or that it moves none. `covered.test.ts` holds each
 * claim on random estimates: without a slot that moves something the answer is another, and with all others it is the same.
 */
import type { Json } from './reader.js';

/** Money and hours of the quote; the day it is ready; what is held against the quote later. */
export type Answer = 'money' | 'days' | 'job';

export const MOVES: { readonly [kind: string]: { readonly [slot: string]: Answer } } = {
  shop: { currency: 'money', rounding: 'money', workday: 'days', technicians: 'days', closed: 'days', rate: 'money', markup: 'money', tax: 'money', 'core-tax': 'money', fee: 'money', overrun: 'job' },
  rate: { price: 'money', cost: 'money', usual: 'money' },
  markup: { percent: 'money', upTo: 'money', on: 'money' },
  tax: { percent: 'money', on: 'money', by: 'money' },
  'core-tax': { policy: 'money', on: 'money' },
  overrun: { percent: 'job', fixed: 'job', atLeast: 'job', atMost: 'job' },
  fee: { quantity: 'money', price: 'money', percent: 'money', of: 'money', cap: 'money' },
  tool: { price: 'money', arrives: 'days' },
  estimate: { written: 'money', start: 'money', answer: 'days', technicians: 'days', interest: 'money' },
  vehicle: { worth: 'money', unrepaired: 'money', downtime: 'money' },
  access: { includes: 'money', remove: 'money', refit: 'money', class: 'money', needs: 'money', uses: 'money', part: 'money', sublet: 'money' },
  part: { quantity: 'money', price: 'money', cost: 'money', condition: 'money', arrives: 'days', core: 'money' },
  core: { charge: 'money', due: 'money', less: 'money', assemble: 'money', class: 'money', keeps: 'money' },
  keeps: { less: 'money', worth: 'money' },
  sublet: { quantity: 'money', price: 'money', cost: 'money', backIn: 'days', after: 'days' },
  labour: { count: 'money', hours: 'money', with: 'money', class: 'money', needs: 'money', uses: 'money', after: 'days', apart: 'days', done: 'days', takes: 'money' },
  takes: { hours: 'money', with: 'money' },
  consider: { labour: 'money' },
  stage: { do: 'money', opens: 'money', putBack: 'money', class: 'money', destroys: 'money' },
  option: { do: 'money', fit: 'money', send: 'money', charge: 'money', way: 'money', worth: 'money', lasts: 'money', resale: 'money', labour: 'money', part: 'money', sublet: 'money', fee: 'money', harvest: 'money' },
  harvest: { value: 'money' },
  inspect: { price: 'money', hours: 'money', class: 'money' },
  authorised: { amount: 'job', for: 'job', on: 'job' },
  started: { on: 'job' },
  closed: { for: 'job', on: 'job', clocked: 'job', paid: 'job', credited: 'job' },
  clocked: { line: 'job', hours: 'job' },
  paid: { line: 'job', amount: 'job' },
  credited: { line: 'job', amount: 'job' },
};

const one = (likely: string, unit?: string) => ({ low: likely, likely, high: likely, ...(unit === undefined ? {} : { unit }) });
const note: readonly Json[] = [{ kind: 'note', title: 'Customer drives 9,000 a year at 12.50' }];
const WARRANTY = one('18', 'mo');

/** Slots that move no figure of a quote, with something that they may say. */
export const MOVES_NOTHING: { readonly [kind: string]: { readonly [slot: string]: unknown } } = {
  shop: { address: ['12 Quay Street', 'Bay 3'], phone: '555 0100', locale: 'en-GB', note },
  fee: { countsAs: ['nothing'] },
  estimate: { valid: one('14', 'd') },
  vehicle: { engine: '3.0 V6', built: '2012-11', modelYear: one('2013'), odometer: one('131400', 'mi'), vin: '11111111111111111', refrigerant: 'yes', note },
  finding: { seenBy: 'borescope', compression: { values: ['171', '168', '38'], unit: 'psi' }, leakage: { values: ['8', '9', '82'], unit: '%' }, debris: 'magnetic', fluid: 'milky', noise: 'puffing at idle', codes: ['P0304'], note },
  access: { caution: ['lifting', 'coolant'], countsAs: ['engine-out'], note },
  part: { warranty: WARRANTY, from: 'the breaker in the next street', countsAs: ['head-gasket'], note },
  sublet: { warranty: WARRANTY, countsAs: ['crack-check'], note },
  labour: { caution: ['fuel'], countsAs: ['head-off'], note },
  option: { warranty: one('3', 'mo'), leavesOut: ['the radio code'], caution: ['oil'], note },
  inspect: { note },
  authorised: { by: 'the owner', how: 'phone', version: '3fa91c2' },
  closed: { note },
};

/** Lines and slots of which the quote knows nothing at all, because they only point or belong to the decision. */
export const BESIDE: { readonly [kind: string]: string } = {
  steelyard: 'the form of the language',
  use: 'brings in other files: the estimates in several files hold it',
  note: 'words',
  finding: 'what work rests on; pictures, names behind because and rules out only point',
  chance: 'left out of the quote: average, cases and inspections count it, see test/weigh/decision',
  finds: 'of the decision, see test/weigh/decision/inspect.test.ts',
  coverage: 'told beside the quote, see test/weigh/decide/covered.test.ts',
  quoted: 'a record; it says when an offer runs out',
};

/** Slots and lines that only point; what the shop owns costs nothing and is there. */
export const POINTS_ONLY: { readonly [kind: string]: readonly string[] } = {
  shop: ['tool'], part: ['because'], sublet: ['because'], labour: ['because', 'chance'], access: ['chance'], option: ['because', 'chance'], inspect: ['finds'], closed: ['billed'],
};
