import { bare, defineKind } from '../kind.js';
import { count } from '../values.js';

/** The newest form of the language that this version reads. */
export const formatVersion = 1;

export const format = defineKind({
  word: 'steelyard',
  says: 'The first line: says that the file is an estimate, and which form of the language it is written in.',
  example: 'steelyard 1',
  fields: { version: bare(count, 'The form of the language; 1 is the only one so far.') },
});
