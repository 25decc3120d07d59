import { defineKind } from '../kind.js';

export const note = defineKind({
  word: 'note',
  says: 'A remark that goes with the estimate, unlike a # comment, which stays in the file.',
  example: 'note "Customer drives 9,000 miles a year"',
  title: 'required',
  titleSays: 'the remark itself',
  fields: {},
});
