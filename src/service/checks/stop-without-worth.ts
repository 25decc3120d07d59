import type { Rule } from '../../language/index.js';
import { moneyText } from '../../report/index.js';
import { clip } from '../../vocabulary/index.js';
import { found, optionCheck } from './check.js';
import { example } from './example.js';
import { factBelow } from './lines.js';
import { mendsNothing } from './mends-nothing.js';

const stopWithoutWorth: Rule<{ readonly option: string; readonly worth: string; readonly unrepaired: string | undefined }> = {
  code: 'stop-without-worth', family: 'money', severity: 'warning', title: 'A way out that mends nothing and counts as mended',
  message: ({ option, worth, unrepaired }) => ({
    what: `Option ${clip(option)} mends nothing and does not say what the vehicle is worth after it, so it counts as mended: ${worth}.`,
    why: 'Stopping then gives up no worth and looks like the cheapest way out.',
    instead: unrepaired === undefined ? 'Write below it what the vehicle brings as it stands, as in worth 900.00, or worth 0 where it is scrapped.' : `Write worth ${unrepaired} below it, what the vehicle brings as it stands, or worth 0 where it is scrapped.`,
  }),
  fix: ({ unrepaired }, at) => (unrepaired === undefined ? undefined : { title: `Write worth ${unrepaired}`, ...factBelow(at, 'worth', unrepaired) }),
  example: example({ lines: 'vehicle "Van"\n  worth 4000.00\n  unrepaired 600.00\n', one: '  labour "Front seal" 2 h\n    because seen\n', other: '«option stop "Stop"»\n' }),
};

/** A worth that could not be read has its own message. */
export const stopCheck = optionCheck(stopWithoutWorth, function* find({ option }, { estimate: { vehicle, options }, comparison }) {
  const worth = vehicle?.worth;
  if (worth === undefined || option.worth !== undefined || option.broken || !mendsNothing(option) || options.every((one) => !one.written || mendsNothing(one))) return;
  yield found(stopWithoutWorth, option.at, { option: option.name, worth: moneyText(worth.likely, comparison.money), unrepaired: vehicle?.unrepaired?.likely.toFixed(comparison.money.currency.digits) });
});
