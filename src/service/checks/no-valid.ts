import { example } from './example.js';
import { unsaid } from './unsaid.js';

export const noValid = unsaid({
  code: 'no-valid', title: 'An estimate whose prices hold for ever',
  missing: ({ header }) => (header.valid === undefined ? header.at : undefined),
  what: 'Nothing says how long these prices hold.',
  why: 'Part prices change, and a used engine may be sold tomorrow.',
  instead: 'Write it below, as in valid 14 d; check your local rule on written estimates.',
  add: { word: 'valid', value: '14 d', title: 'Add valid 14 d' },
  example: example({ header: '  start 2026-11-30\n', one: '  labour "Front seal" 2 h\n    because seen\n' }).replace('estimate "E"', '«estimate "E"»'),
});
