import { headJob } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: bolts tightened to yield are used once. Which they are the maker says, so this is advice. */
export const headWithoutBolts = lacking({
  code: 'head-without-bolts', severity: 'advice', title: 'A head off without new bolts',
  when: lineFor('head-off'),
  topics: ['head-bolts'],
  line: { kind: 'part', name: 'head-bolts', title: 'Head bolts' },
  what: 'brings no new head bolts.',
  why: 'Bolts that are tightened to yield are used once; the maker’s service information says which these are.',
  instead: 'Add them, or allow it where these bolts may be used again.',
  example: headJob('head-bolts'),
});
