import { Places, type Rule } from '../../language/index.js';
import { topicsOf, type Part } from '../../estimate/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { factBelow } from './lines.js';

/** Common practice: a rebuilt unit is sold against the old one. */
const partWithoutCore: Rule<{ readonly part: string }> = {
  code: 'part-without-core', family: 'job', severity: 'advice', title: 'A rebuilt part without its core charge',
  message: ({ part }) => ({
    what: `“${clip(part)}” says nothing about a core.`,
    why: 'A rebuilt unit is usually sold against the old one; the charge is paid now, and comes back only if the old one goes back in time.',
    instead: 'Add a line below it, as in: core 150.00 due 30 d. Allow it where the supplier asks for none.',
  }),
  fix: (_, at) => ({ title: 'Add a core line, to be filled in', ...factBelow(at, 'core', 'due 30 d') }),
  example: example({ one: '  labour "Swap the starter" 2 h\n    because seen\n  «part "Starter" 180.00 rebuilt»\n' }),
};

export const coreCheck = optionCheck(partWithoutCore, function* find({ option }, { isOwn }) {
  for (const part of coreless.itemsIn(option.parts, option.record)) {
    if (isOwn(part)) yield found(partWithoutCore, part.at, { part: part.title });
  }
});

/** Parts that are sold against an old one, and say nothing of it. */
const coreless = new Places<Part>((part) => part.core === undefined && (part.condition === 'rebuilt' || (part.condition === 'used' && topicsOf(part).has('exchange-engine'))));
