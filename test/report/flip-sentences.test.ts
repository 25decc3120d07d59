import { expect, test } from 'vitest';
import { flipSentence } from '../../src/report/index.js';
import { decideText } from '../weigh/decision/weighing.js';

// Amounts worked out by hand.

function sentences(a: string, b: string): readonly string[] {
  const { flips, comparison } = decideText(`steelyard 1\nshop "S"\n  currency USD\noption one "One"\n${a}option two "Two"\n${b}`);
  return flips.map((flip) => flipSentence(flip, comparison.money));
}

test('how far off a figure is, also where that is several times the figure', () => {
  // 400.00 against 1000.00: 600.01 more is 150 % of P, 60 % of Q less. From 200.00 and 50.00 of R on: 300 % and 1200 %.
  expect(sentences('  part "P" 400.00 new\n', '  part "Q" 1000.00 new\n')).toEqual([
    'Below 400.00 for “Q” (price), “Two” is cheaper: 60 % away.', 'Above 1,000.00 for “P” (price), “Two” is cheaper: 150 % away.',
  ]);
  expect(sentences('  part "P" 200.00 new\n  part "R" 50.00 new\n', '  part "Q" 850.00 new\n').slice(1)).toEqual([
    'Above 800.00 for “P” (price), “Two” is cheaper: 300 % away.', 'Above 650.00 for “R” (price), “Two” is cheaper: 1200 % away.',
  ]);
});

test('a flip point a figure away from itself is all of it off', () => {
  // 500.00 against 999.99: 1000.00 for P is the first at which the other is cheaper, and 500.00 more.
  expect(sentences('  part "P" 500.00 new\n', '  part "Q" 999.99 new\n').at(-1)).toBe('Above 999.99 for “P” (price), “Two” is cheaper: 100 % away.');
});

test('a title that is the beginning of a word takes nothing off that word', () => {
  expect(sentences('  part "Pr" 500.00 new\n', '  part "Pri" 600.00 new\n')).toEqual([
    'Below 500.00 for “Pri” (price), “Two” is cheaper: 17 % away.', 'Above 600.00 for “Pr” (price), “Two” is cheaper: 20 % away.',
  ]);
});

test('money counts in the coins of its currency, so that the sentence is true of any price that can be asked', () => {
  const yen = (a: string, b: string) => {
    const { flips, comparison } = decideText(`steelyard 1\nshop "S"\n  currency JPY\n  markup 30%\noption one "One"\n${a}option two "Two"\n${b}`);
    return flips.map((flip) => flipSentence(flip, comparison.money));
  };
  // 1.3 × 770 is 1001; 769 gives 999.7, which is 1000 yen and a tie that the first one has.
  expect(yen('  part "P" 1000 new\n', '  part "Q" cost 900 new\n').slice(0, 2)).toEqual(['Below 769 for “Q” (cost), “Two” is cheaper: 15 % away.', 'Above 1,170 for “P” (price), “Two” is cheaper: 17 % away.']);
  // What is written finer than the coin is followed as finely: 3 × 166.84 is 500.52, and 501 is more than 500.
  expect(yen('  part "P" 3 at 150.50 new\n', '  part "Q" 500 new\n').find((one) => one.includes('“P” (price)'))).toBe('Above 166.83 for “P” (price), “Two” is cheaper: 11 % away.');
});

test('what the vehicle is worth mended and what it brings as it stands are told apart', () => {
  const { flips, comparison } = decideText('steelyard 1\nshop "S"\n  rate bench 100.00\nvehicle "Van"\n  worth 3000.00\n  unrepaired 2000.00\noption mend "Mend"\n  labour "W" 5 h\n');
  // 500.00 for 1000.00 more of worth.
  expect(flips.map((flip) => flipSentence(flip, comparison.money)).filter((one) => one.includes('“Van”'))).toEqual([
    'Below 2,500.00 for “Van” (worth of the vehicle afterwards), “Sell it as it stands” is cheaper: 17 % away.',
    'Above 2,500.00 for “Van” (what it brings as it stands), “Sell it as it stands” is cheaper: 25 % away.',
  ]);
});

test('a likelihood is rounded so that the sentence is true of all that it speaks of', () => {
  const chance = (percent: string, adds: string) => sentences(`  part "P" 500.00 new\n  chance "C" ${percent}\n    part "X" ${adds} new\n`, '  part "Q" 1000.00 new\n').filter((one) => one.includes('“C”'));
  // 500.00 of 700.00 is 71.428… %: at 71.4 % the other is not yet cheaper.
  expect(chance('10%', '700.00')).toEqual(['If “C” is likelier than 71.5 %, “Two” costs less on average: 614 % away.']);
  expect(chance('90%', '700.00')).toEqual(['If “C” is less likely than 71.4 %, “One” costs less on average: 21 % away.']);
  // 500.00 of 800.00 is 62.5 % to the digit; of 1 000 000.00 it is 0.05 %, and nothing is less likely than 0 %.
  expect(chance('10%', '800.00')).toEqual(['If “C” is likelier than 62.5 %, “Two” costs less on average: 525 % away.']);
  expect(chance('5%', '1000000.00')).toEqual(['If “C” is less likely than 0.05 %, “One” costs less on average: 99 % away.']);
  expect(chance('5%', '500.20')).toEqual(['If “C” is likelier than 99.97 %, “Two” costs less on average: 1899 % away.']);
});
