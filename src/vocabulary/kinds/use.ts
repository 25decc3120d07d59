import { defineKind } from '../kind.js';

export const use = defineKind({
  word: 'use',
  says: 'Brings in a shared file: the shop’s rates, parts, jobs and ways in. The path starts at this file’s folder and stays inside the workspace.',
  example: 'use "shop.yard"',
  title: 'required',
  titleSays: 'the path of the shared file',
  fields: {},
});
