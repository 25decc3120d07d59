import type { Rule, Span } from '../../language/index.js';
import type { Chance, Option } from '../../estimate/index.js';
import { clip, is, kinds } from '../../vocabulary/index.js';
import { chancesOf, type Weighed } from '../../weigh/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const chanceOfWhatIsDone: Rule<{ readonly chance: string; readonly option: string }> = {
  code: 'chance-of-what-is-done', family: 'money', severity: 'warning', title: 'A chance of work that is done anyway',
  message: ({ chance, option }) => ({
    what: `All that “${clip(chance)}” would take is in option ${clip(option)} already.`,
    why: 'What is paid for is not charged again, so this chance moves neither money nor days, and the quote would say that it adds nothing.',
    instead: 'Write the work or the parts that it would take beyond that, or remove the chance.',
  }),
  example: example({ lines: 'labour seal "Front seal" 2 h\n  because seen\n', one: '  do seal\n  chance "The seal is worn" 20%\n    do «seal»\n' }),
};

/** A chance of a job or a way in is in several options, and may add something in one of them. */
export const chanceDoneCheck = wholeCheck(chanceOfWhatIsDone, function* find({ estimate, options, comparison: { money } }) {
  const adding = new Set<Chance>();
  const idle = new Map<Chance, Option>();
  for (const { weighed, option } of options) {
    if (option.chances.length === 0 && estimate.chances.size === 0) continue;
    for (const { chance, when } of chancesOf(weighed, estimate, money).counted) {
      if (when === 'open' && isDone(chance, weighed)) idle.set(chance, option);
      else adding.add(chance);
    }
  }
  for (const [chance, option] of idle) if (!adding.has(chance)) yield found(chanceOfWhatIsDone, placeOf(chance), { chance: chance.title, option: option.name });
});

/** A fee is charged each time. */
function isDone({ labour, parts, sublets, fees, chances }: Chance, { option, planned: { chosen: { paid } } }: Weighed): boolean {
  if (chances.length > 0 || fees.length > 0 || labour.length + parts.length + sublets.length === 0) return false;
  return labour.every((job) => option.labour.includes(job))
    && parts.every((part) => option.parts.includes(part) || paid.some((way) => way.parts.includes(part)))
    && sublets.every((sublet) => option.sublets.includes(sublet) || paid.some((way) => way.sublets.includes(sublet)));
}

/** The first thing that the chance names, all of which is done anyway. */
function placeOf({ record, at }: Chance): Span {
  if (!is(record, kinds.chance)) return at;
  const { do: jobs, fit, send } = record.values;
  return [jobs, fit, send].find((names) => names !== undefined)?.[0]?.at ?? at;
}
