import { Places, type Rule } from '../../language/index.js';
import type { Part } from '../../estimate/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { behind } from './lines.js';

/** Common practice: a core goes back complete, or the refund shrinks. */
const keepWithoutLess: Rule<{ readonly piece: string }> = {
  code: 'keep-without-less', family: 'job', severity: 'advice', title: 'A piece kept back at no loss',
  message: ({ piece }) => ({
    what: `“${clip(piece)}” is kept back from the core, and the refund stays whole.`,
    why: 'A supplier takes something off for a core that is not complete, so too much may be expected back.',
    instead: 'Write what the refund loses, as in less 40.00, or less 0.00 where the supplier agreed to it.',
  }),
  fix: (_, at) => ({ title: 'Write less 0.00: nothing is lost', ...behind(at, 'less 0.00') }),
  example: example({ one: '  labour "Swap the starter" 2 h\n    because seen\n  part "Starter" 180.00 rebuilt\n    core 60.00\n      «keeps "Solenoid"»\n' }),
};

export const keepCheck = optionCheck(keepWithoutLess, function* find({ option }) {
  for (const { core } of keeping.itemsIn(option.parts, option.record)) {
    for (const keep of core?.keeps ?? []) if (keep.less === undefined) yield found(keepWithoutLess, keep.at, { piece: keep.title });
  }
});

const keeping = new Places<Part>(({ core }) => core !== undefined && core.keeps.length > 0);
