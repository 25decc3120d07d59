import { describe, expect, test } from 'vitest';
import { chosenIn } from '../../src/report/quote/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

// Which option is quoted where none is named: the one that costs least in all, and none while something may hide a cheaper one. Common practice:
// a customer is never quoted what only a slip made the cheapest. 100.00 an hour.

const HEAD = 'steelyard 1\nshop "S"\n  rate bench 100.00\nestimate "E"\n  start 2026-11-30\n';
const MEND = 'option mend "Mend it"\n  labour "Head" 10 h\n';
const SWAP = 'option swap "Swap it"\n  labour "Swap" 9 h\n';

/** The option that is taken, or why none is, with what stands in the way. */
function taken(text: string): string {
  const { comparison, problems } = serviceOver({ 'e.yard': HEAD + text }).service.weighing(uriOf('e.yard'));
  const chosen = chosenIn(comparison, problems);
  switch (chosen.kind) {
    case 'chosen': return chosen.option.name;
    case 'no-option': return chosen.kind;
    case 'unread': return `${chosen.kind}: ${chosen.first.code}`;
    default: return `${chosen.kind}: ${chosen.options.map(({ name }) => name).join(', ')}`;
  }
}

const AGAINST = (...names: readonly string[]) => `finding scored "Bores scored"\n  rules out ${names.join(', ')}\n`;

describe('without a name', () => {
  test('the cheapest is taken, wherever it stands', () => {
    expect([taken(MEND + SWAP), taken(SWAP + MEND), taken(MEND)]).toEqual(['swap', 'swap', 'mend']);
  });

  test('none is taken where there is none', () => {
    expect(taken('labour head "Head" 10 h\n')).toBe('no-option');
  });

  test('what findings speak against is not taken, and that is said where nothing else is left', () => {
    expect(taken(AGAINST('swap') + MEND + SWAP)).toBe('mend');
    expect(taken(AGAINST('mend', 'swap') + MEND + SWAP)).toBe('ruled-out: mend, swap');
  });

  test('none is taken while one that can’t be weighed might be the cheapest', () => {
    const unpriced = 'option used "Used engine"\n  part "Engine" used\n';
    expect(taken(MEND + SWAP + unpriced)).toBe('incomplete: used');
    expect(taken(unpriced + unpriced.replace('used "', 'other "') + MEND)).toBe('incomplete: used, other');
    const byItsJob = 'labour fit "Fit it" 5 hh\noption used "Used engine"\n  do fit\n';
    expect(taken(MEND + SWAP + byItsJob)).toBe('incomplete: used');
    // What speaks against it keeps it from being the cheapest that is left.
    expect(taken(AGAINST('used') + MEND + SWAP + byItsJob)).toBe('swap');
    expect(taken(AGAINST('used', 'swap', 'mend') + MEND + SWAP + byItsJob)).toBe('ruled-out: mend, swap, used');
  });

  test('selling it as it stands holds nothing up, and is not told among what can’t be weighed', () => {
    const vehicle = 'vehicle "Van"\n  worth 1900.00\n  unrepaired 400.00\n';
    expect(taken(vehicle + MEND + SWAP)).toBe('swap');
    // Where the line of the vehicle can’t be read, nobody knows what the written ones leave, either.
    expect(taken(vehicle.replace('400.00', '400.00 ??') + MEND + SWAP)).toBe('incomplete: mend, swap');
  });

  test('none is taken while a line can’t be read that may be an option, or speak against one', () => {
    expect(taken(`${MEND}${SWAP}opton used "Used engine"\n  part "Engine" 90.00 used\n`)).toBe('unread: unknown-kind');
    expect(taken(`${MEND}${SWAP}option "Used engine"\n`)).toMatch(/^unread: /);
    expect(taken(`finding scored "Bores scored"\n  rules out swaap\n${MEND}${SWAP}`)).toBe('unread: unknown-name');
  });

  test('a slip in a line that is neither holds nothing up, nor does advice', () => {
    expect(taken(`${MEND}${SWAP}labour seal "Seal" 2 hh\n`)).toBe('swap');
    expect(taken(`note "Rings twice"\n${MEND}${SWAP}`)).toBe('swap');
    expect(taken(`${MEND}${SWAP}${SWAP.replace('swap "Swap it"', 'again "Swap it"').replace('9 h', '12 h')}`)).toBe('swap');
  });
});
