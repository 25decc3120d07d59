import type { Rule } from '../../language/index.js';
import { moneyText } from '../../report/index.js';
import { clip } from '../../vocabulary/index.js';
import { authorisedIn } from '../../weigh/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

/** The shop's own rule decides; what the law says is for the reader to look up. */
const billedAboveAuthorised: Rule<{ readonly name: string; readonly billed: string; readonly amount: string; readonly over: string; readonly room: string | undefined }> = {
  code: 'billed-above-authorised', family: 'money', severity: 'warning', title: 'More billed than was authorised',
  message: ({ name, billed, amount, over, room }) => ({
    what: `${billed} was billed for ${clip(name)}, and ${amount} was authorised: ${over} more, ${room === undefined ? 'and there is no room without asking' : `with a room of ${room}`}.`,
    why: 'No line says that the customer agreed to it.',
    instead: 'If they did, write that whole amount on a line of its own, with its day; if not, look at the bill again. Check your local rule on written estimates and authorisation.',
  }),
  example: example({ shop: '  overrun 10%\n', one: '  labour "Front seal" 2 h\n    because seen\n', other: 'option stop "Stop"\nauthorised 200.00 for one on 2026-11-25\nstarted on 2026-11-30\nclosed for one on 2026-11-30\n  billed «230.00»\n' }),
};

export const billedCheck = wholeCheck(billedAboveAuthorised, function* find({ estimate: { closed }, comparison }) {
  if (closed?.billed === undefined) return;
  const { money } = comparison;
  for (const { of, authorised, against, total, amount, over, room, beyond } of authorisedIn(comparison)) {
    if (against !== 'billed' || beyond.likely.isZero()) continue;
    const text = (figure: typeof total) => moneyText(figure.likely, money);
    yield found(billedAboveAuthorised, closed.billed.at, { name: of.name, billed: text(total), amount: text(amount), over: text(over), room: room.likely.isZero() ? undefined : text(room) }, { at: authorised.at, says: 'What was authorised' });
  }
});
