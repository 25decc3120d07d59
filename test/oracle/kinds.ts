/**
 * The lines that an estimate can hold and what each can say, written down from `schemas/manual.md` for the second reader.
 * Nothing here comes from the product; `reader.test.ts` holds that both read the same.
 */

/** How a value is written: a figure, one word or text, several of either with commas, or readings with one unit behind. */
export type Value = 'amount' | 'amounts' | 'text' | 'list' | 'readings';

export interface Slots {
  /** By the word, or two, in front. */
  readonly led: { readonly [words: string]: { readonly key: string; readonly value: Value } };
  /** The figure in front of `at`. */
  readonly counted: string | undefined;
  /** Figures without a word in front, by what they measure. */
  readonly figures: { readonly [measure in 'time' | 'percent' | 'number']?: string };
  /** Words without a word in front: of a list, or any. */
  readonly words: readonly { readonly key: string; readonly words: readonly string[] | 'any' | 'any, several' }[];
}

export interface Kind {
  /** Always there, or where a title stands behind it. */
  readonly name: 'always' | 'before a title' | undefined;
  readonly title: boolean;
  readonly slots: Slots;
  readonly below: readonly string[];
}

type Led = Slots['led'];

/** `key` where the word is the key, `key: words` where it isn't. */
function led(value: Value, ...slots: readonly string[]): Led {
  return Object.fromEntries(slots.map((slot) => {
    const [key = '', words = key] = slot.split(': ');
    return [words, { key, value }];
  }));
}

interface Says {
  readonly name?: 'always' | 'before a title';
  readonly title?: true;
  readonly led?: readonly Led[];
  readonly counted?: string;
  readonly figures?: Slots['figures'];
  readonly words?: Slots['words'];
  readonly below?: readonly string[];
}

function kind({ name, title, led: slots = [], counted, figures = {}, words = [], below = [] }: Says): Kind {
  return { name, title: title === true, slots: { led: Object.assign({}, ...slots) as Led, counted, figures, words }, below };
}

const CONDITIONS = ['new', 'aftermarket', 'rebuilt', 'used', 'customer-supplied'];
const WORK = ['labour', 'part', 'sublet', 'fee'];
const named = { name: 'always', title: true } as const;
const maybeNamed = { name: 'before a title', title: true } as const;

export const KINDS: { readonly [word: string]: Kind } = {
  steelyard: kind({ figures: { number: 'version' } }),
  use: kind({ title: true }),
  note: kind({ title: true }),
  shop: kind({
    title: true, below: ['rate', 'markup', 'tax', 'core-tax', 'fee', 'tool', 'overrun', 'note'],
    led: [led('list', 'address', 'closed'), led('text', 'phone', 'locale', 'currency', 'rounding'), led('amount', 'workday', 'technicians')],
  }),
  rate: kind({ ...named, figures: { number: 'price' }, led: [led('amount', 'cost')], words: [{ key: 'usual', words: ['usual'] }] }),
  markup: kind({ figures: { percent: 'percent' }, led: [led('amount', 'upTo: to'), led('text', 'on')] }),
  tax: kind({ ...named, figures: { percent: 'percent' }, led: [led('list', 'on'), led('text', 'by')] }),
  'core-tax': kind({ words: [{ key: 'policy', words: ['kept', 'refunded', 'none'] }], led: [led('list', 'on')] }),
  overrun: kind({ figures: { percent: 'percent', number: 'fixed' }, led: [led('amount', 'atLeast: at least', 'atMost: at most')] }),
  fee: kind({ ...maybeNamed, counted: 'quantity', figures: { number: 'price', percent: 'percent' }, led: [led('list', 'of', 'countsAs: counts as'), led('amount', 'cap')] }),
  tool: kind({ ...named, figures: { number: 'price' }, led: [led('amount', 'arrives')] }),
  estimate: kind({ title: true, led: [led('text', 'written', 'start'), led('amount', 'valid', 'answer', 'technicians', 'interest')] }),
  vehicle: kind({
    title: true, below: ['note'],
    led: [led('text', 'vin', 'engine', 'built', 'refrigerant'), led('amount', 'modelYear: model year', 'odometer', 'worth', 'unrepaired', 'downtime')],
  }),
  finding: kind({
    ...maybeNamed, below: ['note'],
    led: [led('text', 'seenBy: seen by', 'debris', 'fluid', 'noise'), led('readings', 'compression', 'leakage'), led('list', 'codes: code', 'pictures: picture', 'rulesOut: rules out')],
  }),
  access: kind({
    ...named, below: ['part', 'sublet', 'chance', 'note'],
    led: [led('list', 'includes', 'needs', 'uses', 'caution', 'countsAs: counts as'), led('amount', 'remove', 'refit'), led('text', 'class')],
  }),
  part: kind({
    ...maybeNamed, counted: 'quantity', figures: { number: 'price' }, words: [{ key: 'condition', words: CONDITIONS }], below: ['core', 'note'],
    led: [led('amount', 'cost', 'arrives', 'warranty'), led('text', 'from'), led('list', 'because', 'countsAs: counts as')],
  }),
  core: kind({ figures: { number: 'charge' }, led: [led('amount', 'due', 'less', 'assemble'), led('text', 'class')], below: ['keeps'] }),
  keeps: kind({ title: true, led: [led('amount', 'less', 'worth')] }),
  sublet: kind({
    ...maybeNamed, counted: 'quantity', figures: { number: 'price' }, below: ['note'],
    led: [led('amount', 'cost', 'backIn: back in', 'warranty'), led('list', 'after', 'because', 'countsAs: counts as')],
  }),
  chance: kind({
    ...maybeNamed, figures: { percent: 'percent' }, words: [{ key: 'comeback', words: ['comeback'] }], below: [...WORK, 'chance', 'note'],
    led: [led('list', 'do', 'fit', 'send', 'charge')],
  }),
  labour: kind({
    ...maybeNamed, counted: 'count', figures: { time: 'hours' }, below: ['takes', 'chance', 'note'],
    led: [led('list', 'with', 'needs', 'uses', 'after', 'because', 'caution', 'countsAs: counts as'), led('text', 'class', 'done'), led('amount', 'apart: apart after')],
  }),
  takes: kind({ figures: { time: 'hours' }, led: [led('list', 'with')] }),
  consider: kind({ words: [{ key: 'labour', words: 'any, several' }] }),
  stage: kind({ ...named, led: [led('list', 'do', 'opens', 'destroys'), led('amount', 'putBack: put back'), led('text', 'class')] }),
  option: kind({
    ...named, below: [...WORK, 'harvest', 'chance', 'note'],
    led: [led('list', 'do', 'fit', 'send', 'charge', 'way', 'leavesOut: leaves out', 'caution', 'because'), led('amount', 'worth', 'warranty', 'lasts', 'resale')],
  }),
  harvest: kind({ title: true, figures: { number: 'value' } }),
  inspect: kind({ ...named, figures: { number: 'price', time: 'hours' }, led: [led('text', 'class')], below: ['finds', 'note'] }),
  finds: kind({ figures: { percent: 'shows' }, words: [{ key: 'chance', words: 'any' }], led: [led('amount', 'wrongly')] }),
  coverage: kind({
    ...maybeNamed, words: [{ key: 'sort', words: ['recall', 'campaign', 'bulletin', 'extended-warranty'] }], below: ['note'],
    led: [led('text', 'builtFrom: built from', 'builtTo: built to', 'until', 'from'), led('list', 'covers'), led('amounts', 'years'), led('amount', 'upTo: up to', 'within')],
  }),
  quoted: kind({ figures: { number: 'amount' }, led: [led('text', 'for', 'on')] }),
  authorised: kind({
    figures: { number: 'amount' }, words: [{ key: 'how', words: ['in-person', 'phone', 'message', 'email', 'signed'] }],
    led: [led('text', 'for', 'on', 'by', 'version')],
  }),
  started: kind({ led: [led('text', 'on')] }),
  closed: kind({ led: [led('text', 'for', 'on'), led('amount', 'billed')], below: ['clocked', 'paid', 'credited', 'note'] }),
  clocked: kind({ title: true, words: [{ key: 'line', words: 'any' }], figures: { time: 'hours' } }),
  paid: kind({ title: true, words: [{ key: 'line', words: 'any' }], figures: { number: 'amount' } }),
  credited: kind({ title: true, words: [{ key: 'line', words: 'any' }], figures: { number: 'amount' } }),
};

/** What may stand at the left edge. */
export const TOP: readonly string[] = [
  'steelyard', 'use', 'shop', 'estimate', 'vehicle', 'finding', 'access', 'labour', 'part', 'sublet', 'fee', 'tool', 'consider', 'stage', 'option', 'inspect',
  'coverage', 'quoted', 'authorised', 'started', 'closed', 'note',
];
