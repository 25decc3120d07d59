import { Places, type Rule } from '../../language/index.js';
import type { Labour } from '../../estimate/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const firstLeftOut: Rule<{ readonly work: string; readonly option: string }> = {
  code: 'first-left-out', family: 'money', severity: 'warning', title: 'An option without the work that comes before the decision',
  message: ({ work, option }) => ({
    what: `“${clip(work)}” is done before the customer decides, and option ${clip(option)} leaves it out.`,
    why: 'It is owed whatever is decided then; an option without it looks cheaper by it, and so does selling the vehicle as it stands.',
    instead: 'Name it behind do of this option too, or leave out done first where it belongs to the other option alone.',
  }),
  example: example({ lines: 'labour look "Look inside" 1 h done first\n  because seen\n', one: '  do look\n  labour "Front seal" 2 h\n    because seen\n', other: '«option stop "Stop"»\n' }),
};

/** The same work may be written in each option, under the same title. */
export const firstCheck = wholeCheck(firstLeftOut, function* find({ options }) {
  const first = new Set(options.flatMap(({ option: { labour, record } }) => doneFirst.itemsIn(labour, record).map(({ title }) => title)));
  for (const work of first) {
    for (const { option } of options) if (option.labour.every(({ title }) => title !== work)) yield found(firstLeftOut, option.at, { work, option: option.name });
  }
});

const doneFirst = new Places<Labour>(({ done }) => done === 'first');
