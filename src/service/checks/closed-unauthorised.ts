import { latest } from '../../estimate/index.js';
import type { Rule } from '../../language/index.js';
import { clip } from '../../vocabulary/index.js';
import { authorisedElse } from '../../weigh/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const closedUnauthorised: Rule<{ readonly done: string; readonly agreed: string }> = {
  code: 'closed-unauthorised', family: 'job', severity: 'warning', title: 'Closed for something else than was authorised',
  message: ({ done, agreed }) => ({
    what: `By this ${clip(done)} was done; ${clip(agreed)} is what was authorised last.`,
    why: 'No line says that the customer agreed to what was done.',
    instead: `Correct the name, or write what was agreed on a line of its own: authorised 940.00 for ${clip(done)} on 2026-11-25 by "the owner" phone`,
  }),
  example: example({ one: '  labour "Front seal" 2 h\n    because seen\n', other: 'option stop "Stop"\nauthorised 200.00 for one on 2026-11-25\nstarted on 2026-11-30\nclosed for «stop» on 2026-11-30\n' }),
};

export const closedCheck = wholeCheck(closedUnauthorised, function* find({ estimate }) {
  const { closed, authorised } = estimate;
  const agreed = authorisedElse(estimate);
  if (closed?.option === undefined || agreed === undefined) return;
  const last = latest(authorised.filter((one) => one.for === agreed.name));
  const at = (closed.record.values['for'] as { readonly at: typeof closed.at } | undefined)?.at ?? closed.at;
  yield found(closedUnauthorised, at, { done: closed.option.name, agreed: agreed.name }, last === undefined ? undefined : { at: last.at, says: 'What was authorised' });
});
