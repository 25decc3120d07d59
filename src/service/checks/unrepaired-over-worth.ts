import type { Rule } from '../../language/index.js';
import { moneyText } from '../../report/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';

const unrepairedOverWorth: Rule<{ readonly unrepaired: string; readonly worth: string }> = {
  code: 'unrepaired-over-worth', family: 'money', severity: 'warning', title: 'A vehicle worth more unrepaired than repaired',
  message: ({ unrepaired, worth }) => ({
    what: `As it stands the vehicle brings ${unrepaired}, and repaired it is worth ${worth}.`,
    why: 'Selling it as it stands is the cheapest way out then, whatever the repair costs.',
    instead: 'Look at both figures again; worth is what it brings once it is mended.',
  }),
  example: example({ lines: 'vehicle "Van"\n  worth 4000.00\n  unrepaired «9000.00»\n', one: '  labour "Front seal" 2 h\n    because seen\n', other: '' }),
};

export const unrepairedCheck = wholeCheck(unrepairedOverWorth, function* find({ estimate: { vehicle }, comparison }) {
  const { unrepaired, worth } = vehicle ?? {};
  if (unrepaired === undefined || worth === undefined || !unrepaired.likely.gt(worth.likely)) return;
  yield found(unrepairedOverWorth, unrepaired.at, { unrepaired: moneyText(unrepaired.likely, comparison.money), worth: moneyText(worth.likely, comparison.money) }, { at: worth.at, says: 'What it is worth repaired' });
});
