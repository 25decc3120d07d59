import { defineKind } from '../kind.js';

export const note = defineKind({
  word: 'note',
  says: 'A remark. The customer reads it on the quote where it stands at the left edge, in a shared file too, or below the option that is quoted. Below anything else it is for the shop alone; a # comment stays in the file.',
  example: 'note "Customer drives 9,000 miles a year"',
  title: 'required',
  titleSays: 'the remark itself',
  fields: {},
});
