import { headJob } from './example.js';
import { lacking, lineFor } from './lacking.js';

/** Common practice: gaskets, seals and O-rings are used once. */
export const headWithoutGasket = lacking({
  code: 'head-without-gasket', severity: 'warning', title: 'A head off without a new gasket',
  when: lineFor('head-off'),
  topics: ['head-gasket'],
  line: { kind: 'part', name: 'head-gasket', title: 'Head gasket set' },
  what: 'brings no new head gasket.',
  why: 'A head gasket is used once; without its line the parts are too low.',
  instead: 'Add the gasket, or say counts as head-gasket on the part that has it.',
  example: headJob('head-gasket'),
});
