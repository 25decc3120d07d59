import { describe, expect, test } from 'vitest';
import { Usage } from '../../../src/weigh/schedule/usage.js';

/** Technicians who are busy over these stretches. */
function busy(technicians: number, ...stretches: readonly (readonly [number, number])[]): Usage {
  const usage = new Usage(technicians, stretches.length);
  usage.clear();
  for (const [start, end] of stretches) usage.occupy(start, end);
  return usage;
}

// All by hand.
describe('so much work fits in by', () => {
  test.each([
    [1, 0, 0, [], 0],
    [2, 0, 6, [], 3],
    [2, 5, 6, [], 8],
    [1, 0, 2, [[0, 3]], 5],
    [1, 1, 2, [[0, 3]], 5],
    [1, 4, 2, [[0, 3]], 6],
    [1, 0, 2, [[3, 5]], 2],
    [1, 0, 3, [[3, 5]], 3],
    [1, 0, 4, [[3, 5]], 6],
    [1, 1, 3, [[3, 5]], 6],
    [2, 0, 3, [[0, 4]], 3],
    [2, 0, 6, [[0, 4]], 5],
    [2, 2, 6, [[0, 4]], 6],
    [2, 0, 5, [[1, 3], [1, 3]], 4.5],
    [2, 0, 4, [[1, 3], [2, 4]], 4],
    [2, 0, 5, [[1, 3], [2, 4]], 4.5],
  ] as const)('%d technicians, from %d on, %d: busy %j', (technicians, from, work, stretches, end) => {
    expect(busy(technicians, ...stretches).fitted(from, work)).toBe(end);
  });
});

describe('free for so long without a break from', () => {
  test.each([
    [1, 0, 2, [[0, 3]], 3],
    [1, 0, 2, [[2, 3]], 0],
    [1, 0, 2.5, [[2, 3]], 3],
    [1, 1, 1, [[2, 3]], 1],
    [1, 1.5, 1, [[2, 3]], 3],
    [1, 2, 1, [[2, 3], [3, 4], [5, 6]], 4],
    [1, 2, 2, [[2, 3], [3, 4], [5, 6]], 6],
    [2, 0, 5, [[0, 3], [2, 4]], 3],
    [2, 0, 2, [[0, 3], [2, 4]], 0],
    [2, 9, 1, [[0, 3], [2, 4]], 9],
  ] as const)('%d technicians, from %d on, %d: busy %j', (technicians, from, duration, stretches, start) => {
    expect(busy(technicians, ...stretches).earliest(from, duration)).toBe(start);
  });
});

test('a copy is as busy as what it was made from, and then goes its own way', () => {
  const one = busy(1, [0, 2], [4, 6]);
  const other = new Usage(1, 3);
  other.copy(one);
  expect(other.earliest(0, 3)).toBe(6);
  other.occupy(6, 7);
  expect([other.earliest(0, 3), one.earliest(0, 3)]).toEqual([7, 6]);
});

test('a stretch without length makes nobody busy', () => {
  expect(busy(1, [1, 1], [3, 2]).earliest(0, 5)).toBe(0);
});
