import type { Rule } from '../../language/index.js';
import { moneyText } from '../../report/index.js';
import { found, wholeCheck } from './check.js';
import { example } from './example.js';
import { mendsNothing } from './mends-nothing.js';

const unrepairedOverWorth: Rule<{ readonly unrepaired: string; readonly worth: string }> = {
  code: 'unrepaired-over-worth', family: 'money', severity: 'warning', title: 'A vehicle worth more unrepaired than repaired',
  message: ({ unrepaired, worth }) => ({
    what: `As it stands the vehicle brings ${unrepaired}, and repaired it is worth ${worth}.`,
    why: 'Selling it as it stands is the cheapest way out then, whatever the repair costs.',
    instead: 'Look at both figures again; worth is what it brings once it is mended.',
  }),
  example: example({ lines: 'vehicle "Van"\n  worth 4000.00\n  unrepaired «9000.00»\n', one: '  labour "Front seal" 2 h\n    because seen\n', other: '' }),
};

export const unrepairedCheck = wholeCheck(unrepairedOverWorth, function* find({ estimate: { vehicle, options }, comparison: { money } }) {
  const { unrepaired, worth } = vehicle ?? {};
  if (worth === undefined) return;
  for (const stands of [unrepaired, ...options.filter(mendsNothing).map((option) => option.worth)]) {
    if (stands === undefined || !stands.likely.gt(worth.likely)) continue;
    yield found(unrepairedOverWorth, stands.at, { unrepaired: moneyText(stands.likely, money), worth: moneyText(worth.likely, money) }, { at: worth.at, says: 'What it is worth repaired' });
  }
});
