import type { Rule } from '../../language/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';
import { factBelow } from './lines.js';

export const noTax: Rule<undefined> = {
  code: 'no-tax', family: 'money', severity: 'advice', title: 'A shop without a tax',
  message: () => ({
    what: 'The shop names no tax.',
    why: 'Where parts or work are taxed, every total is too low by it.',
    instead: 'Add a line below shop, as in: tax sales "Sales tax" 7.25% on parts. Check your local rule on tax; where there is none, write 0%.',
  }),
  fix: (_, at) => ({ title: 'Add a tax line, to be filled in', ...factBelow(at, 'tax', 'sales "Sales tax" 0% on parts, fees') }),
  example: example({ one: '  labour "Front seal" 2 h\n    because seen\n' }).replace('  tax sales 7% on parts\n', '').replace('shop "S"', '«shop "S"»'),
};

export const taxCheck = wholeCheck(noTax, function* find({ estimate: { shop } }) {
  if (shop.source !== undefined && shop.taxes.length === 0) yield found(noTax, shop.source.at, undefined);
});
