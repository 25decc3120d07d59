import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const startedUnauthorised: Rule<{ readonly started: string; readonly first: string | undefined }> = {
  code: 'started-unauthorised', family: 'job', severity: 'advice', title: 'Work that began before anything was authorised',
  message: ({ started, first }) => ({
    what: first === undefined ? `Work began on ${clip(started)}, and nothing is authorised.` : `Work began on ${clip(started)}; the first authorisation is of ${clip(first)}.`,
    why: 'What the customer agreed to before it can’t be told later.',
    instead: 'Write what was agreed on a line of its own: authorised 940.00 for repair on 2026-11-25 by "the owner" phone',
  }),
  example: example({ one: '  labour "Front seal" 2 h\n    because seen\n', other: 'option stop "Stop"\n«started on 2026-11-30»\n' }),
};

export const startedCheck = wholeCheck(startedUnauthorised, function* find({ estimate: { started, authorised } }) {
  if (started?.on === undefined) return;
  const days = authorised.map(({ on }) => on ?? '').sort();
  const [first] = days;
  if (first === undefined || first > started.on) yield found(startedUnauthorised, started.at, { started: started.on, first });
});
