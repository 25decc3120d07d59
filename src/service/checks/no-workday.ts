import { example } from './example.js';
import { unsaid } from './unsaid.js';

export const noWorkday = unsaid({
  code: 'no-workday', title: 'A shop without its working day',
  missing: ({ estimate: { shop, options }, header }) => {
    const counts = (header.start ?? header.written) !== undefined && options.some(({ labour }) => labour.length > 0);
    return counts && shop.workday === undefined ? shop.source?.at : undefined;
  },
  what: 'The shop does not say how many hours a working day has.',
  why: 'Ready dates are shown as if it had eight; hours are not days.',
  instead: 'Write it below shop, as in workday 7.5 h.',
  add: { word: 'workday', value: '8 h', title: 'Add workday 8 h' },
  example: example({ one: '  labour "Front seal" 2 h\n    because seen\n' }).replace('  workday 8 h\n', '').replace('shop "S"', '«shop "S"»'),
});
