import { example } from './example.js';
import { lacking } from './lacking.js';
import { debrisFinding, keepsEngine } from './debris.js';

/** Common practice: iron or steel in the oil comes from gears, shafts or what lies behind a bearing. */
export const debrisWithoutBearings = lacking({
  code: 'debris-without-bearings', severity: 'warning', title: 'Magnetic debris without a look at the bearings',
  when: (one, view) => (keepsEngine(one) && debrisFinding(view)?.debris === 'magnetic' ? (one.option.labour.find(view.isOwn) ?? one.option) : undefined),
  topics: ['bearings-check'],
  line: { kind: 'labour', name: 'bearings', title: 'Main and rod bearings: check' },
  what: 'keeps an engine with iron in its oil, and nobody looks at the bearings.',
  why: 'What made the iron may be what fails next, after all other work is paid.',
  instead: 'Add the look at the bearings, or say counts as bearings-check on the line that has it.',
  example: example({ lines: 'finding iron "Shiny dust in the filter"\n  debris magnetic\n«labour pan "Oil pan, pickup and oil cooler: clean" 4 h»\n  because seen, iron\n', one: '  do pan\n' }),
});
