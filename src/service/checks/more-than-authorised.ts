import type { Rule } from '../../language/index.js';
import { moneyText } from '../../report/index.js';
import { clip } from '../../vocabulary/index.js';
import { authorisedIn } from '../../weigh/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

/** The shop's own rule decides; what the law says is for the reader to look up. */
const moreThanAuthorised: Rule<{ readonly name: string; readonly total: string; readonly amount: string; readonly over: string; readonly room: string | undefined }> = {
  code: 'more-than-authorised', family: 'money', severity: 'warning', title: 'More than was authorised',
  message: ({ name, total, amount, over, room }) => ({
    what: `${clip(name)} comes to ${total} today, tax and core charges included, and ${amount} was authorised: ${over} more, ${room === undefined ? 'and there is no room without asking' : `with a room of ${room}`}.`,
    why: 'The customer has not agreed to it.',
    instead: 'Ask the customer before going on, and write the new total as agreed on a line of its own. Check your local rule on written estimates and authorisation.',
  }),
  example: example({ shop: '  overrun 10%\n', one: '  labour "Front seal" 2 h\n    because seen\n', other: 'option stop "Stop"\n«authorised 150.00 for one on 2026-11-25»\n' }),
};

export const authorisedCheck = optionCheck(moreThanAuthorised, function* find({ option }, { comparison, resolved }) {
  const { money, stages } = comparison;
  for (const { of, authorised, complete, mustAsk, since, total, amount, over, room } of authorisedIn(comparison)) {
    // What is found of a stage with every option is told once.
    const isStage = stages.some(({ stage }) => stage === of);
    if (!complete || !mustAsk || since !== undefined || (of !== option && !isStage)) continue;
    // A line that can't be relied on has its message already.
    if (resolved.problems.some(({ severity, at }) => severity === 'error' && at.block === authorised.record.block)) continue;
    const text = (figure: typeof total) => moneyText(figure.likely, money);
    const data = { name: `${isStage ? 'Stage' : 'Option'} ${of.name}`, total: text(total), amount: text(amount), over: text(over), room: room.likely.isZero() ? undefined : text(room) };
    yield found(moreThanAuthorised, authorised.at, data, { at: of.at, says: 'What comes to more' });
  }
});
