import { describe, expect, test } from 'vitest';
import { decide } from '../../../src/weigh/index.js';
import { decideText, oneFile, weighFresh } from '../decision/weighing.js';

// Which inspections are weighed, and what they may show. Rules of our own; amounts worked out by hand.

const text = (one: string, two: string, more: string) => `steelyard 1\nshop "S"\n  rate bench 100.00\noption one "One"\n${one}option two "Two"\n${two}${more}`;
const chance = (name: string, percent: number, price: number) => `  chance ${name} "${name.toUpperCase()}" ${percent}%\n    part "X${name}" ${price}.00 new\n`;
const look = (...finds: string[]) => `inspect look "Look" 5.00\n${finds.map((name) => `  finds ${name} 100%\n`).join('')}`;

describe('an inspection is weighed', () => {
  test('where an option has its chance among others, whatever other options have', () => {
    // One: 0 or 100.00, and 10.00 on average; two: 50.00 and 10.00 on average. Knowing: 0 and 50.00 each half the time.
    const [found] = decideText(text(`${chance('a', 50, 100)}${chance('b', 50, 20)}`, `  part "Q" 40.00 new\n${chance('c', 50, 20)}`, look('a'))).inspections;
    expect([found?.choose, found?.worth, found?.results.map(({ shows, choose }) => [...shows, choose])]).toEqual(['two', 20, [['one'], ['A', 'two']]]);
  });

  test('not where no option has the chance that it finds', () => {
    const unused = `labour w "W" 1 h\n${chance('a', 50, 100)}`;
    expect(decideText(text('  part "P" 10.00 new\n', '  part "Q" 40.00 new\n', `${unused}${look('a')}`)).inspections).toEqual([]);
  });

  test('not where there is nothing to choose between: one option, or one that is whole', () => {
    expect(decideText(`steelyard 1\nshop "S"\noption one "One"\n${chance('a', 50, 100)}${look('a')}`).inspections).toEqual([]);
    const { comparison } = weighFresh(oneFile(text(chance('a', 50, 100), '  part "Q" new\n', look('a'))));
    expect(decide(comparison).inspections).toEqual([]);
  });

  test('where its chance is written as always or never happening: it can change nothing', () => {
    for (const [percent, choose, shown] of [[100, 'two', 1], [0, 'one', 0]] as const) {
      const [found] = decideText(text(chance('a', percent, 100), '  part "Q" 40.00 new\n', look('a'))).inspections;
      expect(found).toMatchObject({ worth: 0, net: -5, perfectWorth: 0, choose, verdict: 'cannot change the choice' });
      // What can't be shown calls for no option.
      expect(found?.results.map((one) => [one.shows.length, one.chance, one.choose])).toEqual([[0, 1 - shown, shown === 0 ? 'one' : undefined], [1, shown, shown === 1 ? 'two' : undefined]]);
    }
  });
});

test('a chance and the one below it, both looked for: three things may be so', () => {
  // A half the time 10.00; B half of those 400.00 more. Averages 105.00 and 90.00; knowing: 0, 10.00, and 90.00 in a quarter.
  const one = '  chance a "A" 50%\n    part "Xa" 10.00 new\n    chance b "B" 50%\n      part "Xb" 400.00 new\n';
  const [found] = decideText(text(one, '  part "Q" 90.00 new\n', look('a', 'b'))).inspections;
  const results = found?.results.filter((result) => result.chance > 0).map((result) => [result.shows.join('+'), result.chance, result.choose]);
  expect(results).toEqual([['', 0.5, 'one'], ['A', 0.25, 'one'], ['A+B', 0.25, 'two']]);
  expect(found?.worth).toBeCloseTo(90 - (0.25 * 10 + 0.25 * 90), 9);
});

test('a price alone needs no hours, though the shop has a rate', () => {
  const [found] = decideText(text(chance('a', 50, 100), '  part "Q" 40.00 new\n', look('a'))).inspections;
  expect(found?.price.likely.toFixed(2)).toBe('5.00');
});

test('not weighed while a line of it can’t be read: it would count as free, or as never wrong', () => {
  const seen = (inspect: string) => {
    const { inspections, unread } = decide(weighFresh(oneFile(text(chance('a', 50, 100), '  part "Q" 40.00 new\n', inspect))).comparison);
    return [inspections.length, unread.map(({ title }) => title)];
  };
  expect(seen(look('a'))).toEqual([1, []]);
  expect(seen('inspect look "Look" cost 50.00 0.5 h\n  finds a 100%\n')).toEqual([0, ['Look']]);
  expect(seen('inspect look "Look" 5.00\n  finds a 90% falsely 5%\n')).toEqual([0, ['Look']]);
});
