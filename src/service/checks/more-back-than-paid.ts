import type { Rule } from '../../language/index.js';
import { moneyText } from '../../report/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';

const moreBackThanPaid: Rule<{ readonly option: string; readonly back: string; readonly total: string }> = {
  code: 'more-back-than-paid', family: 'money', severity: 'warning', title: 'An option that pays the customer',
  message: ({ option, back, total }) => ({
    what: `In option ${clip(option)} ${back} comes back, more than its total of ${total}.`,
    why: 'A piece that is taken off or kept is probably valued too high, and then this option looks cheaper than all others.',
    instead: 'Look again at what harvest and keeps lines say; what the vehicle brings as it stands goes behind worth.',
  }),
  example: example({ one: '  labour "Front seal" 2 h\n    because seen\n  harvest "Engine" 900.00\n' }).replace('option one "Mend it"', '«option one "Mend it"»'),
};

export const backCheck = optionCheck(moreBackThanPaid, function* find({ weighed, option }, { comparison }) {
  if (!weighed.net.likely.lt(0)) return;
  yield found(moreBackThanPaid, option.at, { option: option.name, back: moneyText(weighed.returns.all.likely, comparison.money), total: moneyText(weighed.totals.total.likely, comparison.money) });
});
