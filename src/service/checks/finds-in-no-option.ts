import type { Rule } from '../../language/index.js';
import { childrenOf, clip, is, kinds } from '../../vocabulary/index.js';
import { chancesOf } from '../../weigh/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const findsInNoOption: Rule<{ readonly chance: string; readonly inspection: string }> = {
  code: 'finds-in-no-option', family: 'money', severity: 'warning', title: 'An inspection that finds what no option has',
  message: ({ chance, inspection }) => ({
    what: `No option has the chance ${clip(chance)}, so for it “${clip(inspection)}” tells nothing apart.`,
    why: 'An inspection is worth what it changes about the choice; what moves no option can’t be weighed, and is left out of what is told of it.',
    instead: 'Write the chance below an option, or do the job in an option that has it; or remove this line.',
  }),
  example: example({
    lines: 'labour plugs "Spark plugs" 1 h\n  chance strip "A plug thread strips" 10%\n    labour "Thread insert" 2 h\nconsider plugs\ninspect look "Look at the threads" 40.00\n  finds «strip» 90%\n',
    one: '  labour "Front seal" 2 h\n    because seen\n',
  }),
};

/** Only in the estimate’s own file. Where an option has more chances than count, that is told, and may be why. */
export const findsCheck = wholeCheck(findsInNoOption, function* find({ estimate, comparison, isOwn }) {
  const inspections = estimate.inspections.filter(isOwn);
  if (inspections.length === 0) return;
  const counts = comparison.options.map((weighed) => chancesOf(weighed, estimate, comparison.money));
  if (counts.some(({ all, counted }) => all > counted.length)) return;
  const had = new Set(counts.flatMap(({ counted }) => counted.map(({ chance }) => chance)));
  for (const { title, record, finds } of inspections) {
    if (!is(record, kinds.inspect)) continue;
    for (const { values: { chance: name } } of childrenOf(record, kinds.finds)) {
      const one = finds.find(({ chance }) => chance.name === name?.name)?.chance;
      if (name !== undefined && one !== undefined && one.percent !== undefined && !had.has(one)) yield found(findsInNoOption, name.at, { chance: name.name, inspection: title });
    }
  }
});
