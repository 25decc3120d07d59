import { example } from './example.js';
import { unsaid } from './unsaid.js';

export const noTax = unsaid({
  code: 'no-tax', title: 'A shop without a tax',
  missing: ({ estimate: { shop } }) => (shop.taxes.length === 0 ? shop.source?.at : undefined),
  what: 'The shop names no tax.',
  why: 'Where parts or work are taxed, every total is too low by it.',
  instead: 'Add a line below shop, as in: tax sales "Sales tax" 7.25% on parts. Check your local rule on tax; where there is none, write 0%.',
  add: { word: 'tax', value: 'sales "Sales tax" 0% on parts, fees', title: 'Add a tax line, to be filled in' },
  example: example({ one: '  labour "Front seal" 2 h\n    because seen\n' }).replace('  tax sales 7% on parts\n', '').replace('shop "S"', '«shop "S"»'),
});
