import type { Rule } from '../../language/index.js';
import type { Option } from '../../estimate/index.js';
import { clip, type Name } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { withoutName } from './lines.js';

const fittedAndBrought: Rule<{ readonly name: string; readonly word: string; readonly job: string }> = {
  code: 'fitted-and-brought', family: 'names', severity: 'advice', title: 'Named by an option, and brought by its work as well',
  message: ({ name, word, job }) => ({
    what: `${clip(name)} comes with “${clip(job)}” already.`,
    why: 'It is charged once all the same; if two are needed, the total is too low.',
    instead: `Remove it behind ${word}, or write how many on its own line, as in 2 at 12.00.`,
  }),
  fix: ({ name, word }, at) => ({ title: `Remove ${name} behind ${word}`, ...withoutName(at) }),
  example: example({ lines: 'part seal "Front seal" 12.00 new\nlabour front "Front seal: replace" 2 h\n  because seen\n  uses seal\n', one: '  do front\n  fit «seal»\n' }),
};

export const fittedCheck = optionCheck(fittedAndBrought, function* find({ option }) {
  for (const [key, goods] of [['fit', 'parts'], ['send', 'sublets']] as const) {
    const names = (option.record.values[key] as readonly Name[] | undefined) ?? [];
    if (names.length === 0) continue;
    const brought = broughtBy(option, goods);
    for (const { name, at } of names) {
      const job = brought.get(name);
      if (job !== undefined) yield found(fittedAndBrought, at, { name, word: key, job });
    }
  }
});

function broughtBy({ labour }: Option, goods: 'parts' | 'sublets'): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const job of labour) for (const one of job[goods]) if (one.name !== undefined && !found.has(one.name)) found.set(one.name, job.title);
  return found;
}
