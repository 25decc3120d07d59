import { defineKind, led } from '../kind.js';
import { date } from '../values.js';

export const started = defineKind({
  word: 'started',
  says: 'That work began, and when.',
  example: 'started on 2026-11-30',
  fields: { on: led('on', date, 'The day on which work began.') },
});
