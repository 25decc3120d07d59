import type { Rule } from '../../language/index.js';
import { moneyText } from '../../report/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { mendsNothing } from './mends-nothing.js';

const dearerThanWorth: Rule<{ readonly option: string; readonly paid: string; readonly worth: string }> = {
  code: 'dearer-than-worth', family: 'money', severity: 'advice', title: 'An option dearer than the vehicle',
  message: ({ option, paid, worth }) => ({
    what: `In option ${clip(option)} ${paid} is paid in the end, and the vehicle is worth ${worth} after it.`,
    why: 'The customer pays more than is left in the end; stopping may be the better way out.',
    instead: 'Say so beside this option, offer a cheaper one, or add one that stops with what the vehicle brings as it stands.',
  }),
  example: example({ lines: 'vehicle "Van"\n  worth 150.00\n', one: '  labour "Front seal" 2 h\n    because seen\n', other: 'option stop "Stop"\n  worth 20.00\n' }).replace('option one "Mend it"', '«option one "Mend it"»'),
};

/** What comes back, a core deposit or a piece that is kept, is not lost to the customer. */
export const worthCheck = optionCheck(dearerThanWorth, function* find({ weighed, option, repairs }, { comparison }) {
  const { worthAfter, net } = weighed;
  if (!repairs || worthAfter === undefined || !net.likely.gt(worthAfter.likely) || mendsNothing(option)) return;
  yield found(dearerThanWorth, option.at, { option: option.name, paid: moneyText(net.likely, comparison.money), worth: moneyText(worthAfter.likely, comparison.money) }, worthAfter.at === undefined ? undefined : { at: worthAfter.at, says: 'What it is worth' });
});
