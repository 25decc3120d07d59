import { bare, defineKind } from '../kind.js';
import { names } from '../values.js';

export const consider = defineKind({
  word: 'consider',
  says: 'Work that is not part of the repair but due soon: what it costs now, while it is open, and what it would cost alone later.',
  example: 'consider tensioner, plugs-job',
  fields: { labour: bare(names('labour'), 'The work to look at.') },
});
