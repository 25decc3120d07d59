import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

const accessHalf: Rule<{ readonly way: string; readonly has: string; readonly lacks: string }> = {
  code: 'access-half', family: 'money', severity: 'warning', title: 'A way in of which one half is missing',
  message: ({ way, has, lacks }) => ({
    what: `“${clip(way)}” says ${has}, and nothing of ${lacks}.`,
    why: 'What comes apart goes together again; without those hours getting at the work looks cheaper and quicker than it is.',
    instead: `Write ${lacks} with its hours below it, or ${lacks} 0 h where that takes none.`,
  }),
  example: example({ lines: '«access raised "Engine raised"»\n  remove 3 h\nlabour seal "Front seal" 2 h with raised\n  because seen\n', one: '  do seal\n' }),
};

export const halfCheck = optionCheck(accessHalf, function* find({ weighed, placeOf }) {
  for (const way of weighed.planned.chosen.paid) {
    if (way.broken || (way.remove === undefined) === (way.refit === undefined)) continue;
    const [has, lacks] = way.remove === undefined ? ['refit', 'remove'] : ['remove', 'refit'];
    yield found(accessHalf, placeOf(way), { way: way.title, has, lacks } as const);
  }
});
