import { expect, test } from 'vitest';
import { exact, sameItems } from '../../src/language/index.js';

const [a, b] = [{}, {}];

// What is kept from one keystroke to the next is kept by this: alike is not enough, the things must be the very same.
test.each([
  [[], [], true],
  [[a], [a], true],
  [[a, b], [a, b], true],
  [[a, b], [b, a], false],
  [[a], [a, b], false],
  [[a, b], [a], false],
  [[], [a], false],
  [[a], [], false],
  [[a], [{}], false],
  [[a, b], [a, {}], false],
  [[{}, b], [a, b], false],
  [[undefined], [], false],
  [[], [undefined], false],
  [[undefined], [undefined], true],
] as const)('%j and %j (case %#)', (first, second, same) => {
  expect(sameItems(first, second)).toBe(same);
});

test('a list is the same as itself', () => {
  const list = [a, NaN];
  expect(sameItems(list, list)).toBe(true);
});

test('a list without room for more holds the same things, and does not grow with the first', () => {
  const grown = [1];
  grown.push(2, 3);
  const kept = exact(grown);
  grown.push(4);
  expect(kept).toEqual([1, 2, 3]);
  expect(exact([])).toEqual([]);
  expect(exact([])).toBe(exact([]));
});
