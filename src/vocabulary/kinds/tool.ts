import { bare, defineKind, led } from '../kind.js';
import { money, workingWait } from '../values.js';

export const tool = defineKind({
  word: 'tool',
  says: 'A special tool. Below shop it is owned. At the left edge it must be brought in: it takes days to arrive, and may cost a hire.',
  example: 'tool cam-lock "Camshaft locking set" 60.00 arrives 3 d',
  name: 'required',
  title: 'required',
  titleSays: 'the tool in words',
  fields: {
    price: bare(money, 'What its hire costs the customer; nothing where nothing is said.'),
    arrives: led('arrives', workingWait, 'How long until it is there, in working days.'),
  },
});
