import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

export const oneOption: Rule<{ readonly option: string }> = {
  code: 'one-option', family: 'money', severity: 'advice', title: 'Only one way out',
  message: ({ option }) => ({
    what: `Option ${clip(option)} is the only one.`,
    why: 'With nothing beside it, nobody can tell whether it is dear; even stopping is a way out.',
    instead: 'Add another option, such as one that does nothing, with what the vehicle brings as it stands behind worth.',
  }),
  example: example({ one: '  labour "Front seal" 2 h\n    because seen\n', other: '' }).replace('option one "Mend it"', '«option one "Mend it"»'),
};

export const oneCheck = wholeCheck(oneOption, function* find({ estimate: { options } }) {
  const [only, ...others] = options;
  if (only !== undefined && others.length === 0) yield found(oneOption, only.at, { option: only.name });
});
