import { describe, expect, test } from 'vitest';
import { decide } from '../../../src/weigh/index.js';
import { decideText, oneFile, weighFresh } from '../decision/weighing.js';

// What stays the same in the drawn cases, and what varies apart. Rules of our own.

const head = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';

/** The cost in all of every case of an option. */
function cases(text: string, name = 'one'): readonly number[] {
  const { risk } = decideText(text).of(name);
  if (risk === undefined) throw new Error('nothing varies');
  return [...risk.cases.inAll];
}

describe('draws', () => {
  test('two chances that are written alike happen apart: three quarters of the cases have one of two halves', () => {
    const twice = `${head}option one "One"\n${'  chance "C" 50%\n    part "X" 10.00 new\n'.repeat(2)}`;
    const { risk } = decideText(twice).of('one');
    expect(Math.abs((risk?.trouble ?? 0) - 0.75)).toBeLessThan(0.05);
    // Costs are of one line for both: 10.00, 20.00 where each brings its own.
    expect(new Set(cases(twice)).size).toBe(3);
  });

  test('three of them, too', () => {
    const { risk } = decideText(`${head}option one "One"\n${'  chance "C" 50%\n    part "X" 10.00 new\n'.repeat(3)}`).of('one');
    expect(Math.abs((risk?.trouble ?? 0) - 0.875)).toBeLessThan(0.05);
  });

  test('no chance, no trouble; one of 30 % is trouble in as many cases', () => {
    const text = (lines: string) => decideText(`${head}option one "One"\n  part "P" 10 / 20 / 40 new\n${lines}`).of('one').risk?.trouble;
    expect([text(''), text('  chance "C" 30%\n    part "X" 10.00 new\n')]).toEqual([0, 0.3]);
  });

  test('a chance with a name happens in the same cases wherever it stands', () => {
    const chance = (indent: string) => `${indent}chance broken "It breaks" 30%\n${indent}  part "X" 10.00 new\n`;
    const [there, here] = [`${head}option one "One"\n  labour "W" 1 h\n${chance('  ')}`, `${head}option one "One"\n  labour "W" 1 h\n${chance('    ')}`];
    expect(cases(here)).toEqual(cases(there));
    expect(new Set(cases(there)).size).toBe(2);
  });

  test('a line with a name has the same draws under another title, and an option under another title', () => {
    const text = (title: string, option: string) => `${head}labour w "${title}" 1 / 2 / 4 h\noption one "${option}"\n  do w\n`;
    expect(cases(text('Other words', 'Another'))).toEqual(cases(text('Work', 'One')));
  });

  test('figures of one line vary apart', () => {
    // Two ranges of one part: with one draw for both, the dearest piece would always be the largest lot.
    const amounts = cases(`${head}option one "One"\n  part "Oil" 1 / 2 / 3 at 1 / 2 / 3 new\n`);
    const mean = amounts.reduce((sum, one) => sum + one, 0) / amounts.length;
    // The mean of two that are independent is the product of the means, 2 x 2; drawn alike it would be that of a square, more by the variance of 1/9 or so.
    expect(Math.abs(mean - 4)).toBeLessThan(0.06);
  });
});

test('an option that is not whole is the cheapest in no case, and takes none from the others', () => {
  const text = `${head}option one "One"\n  part "P" 400 / 500 / 700 new\noption two "Two"\n  part "Q" 400 / 510 / 700 new\noption three "Three"\n  part "R" new\n`;
  const { comparison } = weighFresh(oneFile(text));
  const shares = decide(comparison).options.map(({ risk }) => risk?.cheapest);
  expect(shares[2]).toBeUndefined();
  expect((shares[0] ?? 0) + (shares[1] ?? 0)).toBeCloseTo(1, 9);
  expect(shares[0]).toBeGreaterThan(0.4);
});

test('an option that is not whole is none that a likelihood turns to', () => {
  // 548.00 on average against 521.00, where that is whole; against 600.00 where it isn't.
  const text = (price: string) => `${head}option one "One"\n  part "P" 500.00 new\n  chance "C" 12%\n    part "X" 400.00 new\noption two "Two"\n  part "Q" 600.00 new\noption three "Three"\n  part "R" 520.00 new\n  part "S" ${price}new\n`;
  const to = (price: string) => decide(weighFresh(oneFile(text(price))).comparison).flips.filter(({ measure }) => measure === 'average').map(({ to: { name }, flips }) => [name, Number(flips.toFixed(6))]);
  expect([to('1.00 '), to('')]).toEqual([[['one', 5.25]], [['two', 25]]]);
});
