import { describe, expect, test } from 'vitest';
import { begun, closest } from '../../src/vocabulary/spelling.js';

// Optimal string alignment: insertions, deletions, changes and swapped neighbours, worked out by hand.
describe('a near miss', () => {
  test.each([
    ['part', ['prat'], 'prat'], ['prt', ['part'], 'part'], ['paart', ['part'], 'part'], ['pxrt', ['part'], 'part'], ['aprt', ['part'], 'part'],
    ['ptra', ['part'], 'part'], // two slips
    ['tarp', ['part'], 'part'], ['trap', ['part'], undefined], // three
    ['xyrt', ['part'], 'part'], ['xyzt', ['part'], undefined],
    ['ab', ['abc'], 'abc'], ['ab', ['abcd'], undefined], // of up to three letters one slip
    ['abc', ['abcde'], undefined], ['abcd', ['abcdef'], 'abcdef'], ['abcd', ['abcdefg'], undefined],
    ['LABOUR', ['labour'], 'labour'], ['labor', ['labour', 'harbor'], 'labour'],
    ['used', ['uses', 'use'], 'uses'], // of two as near the first
    ['x'.repeat(40), ['x'.repeat(41)], 'x'.repeat(41)], ['x'.repeat(41), ['x'.repeat(41)], undefined],
    ['ba', ['ab'], 'ab'], ['a', [], undefined], ['', ['a'], 'a'], ['', ['ab'], undefined],
  ])('%s among %j: %s', (written, words, meant) => {
    expect(closest(written, words)).toBe(meant);
  });
});

test('a beginning stands for the one word that begins so', () => {
  const days = ['monday', 'thursday', 'tuesday', 'saturday', 'sunday'];
  expect(['sat', 'Sat', 'tu', 'thurs'].map((one) => begun(one, days))).toEqual(['saturday', 'saturday', 'tuesday', 'thursday']);
  expect(['t', 's', 'm', '', 'sats'].map((one) => begun(one, days))).toEqual([undefined, undefined, undefined, undefined, undefined]);
  expect(begun('se', ['seal', 'sensor'])).toBeUndefined();
});
