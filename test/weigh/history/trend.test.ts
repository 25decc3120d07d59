import { describe, expect, test } from 'vitest';
import { trendOf } from '../../../src/weigh/history/trend.js';

function orders(values: readonly number[]): number[][] {
  return values.length === 0 ? [[]] : values.flatMap((value, i) => orders(values.filter((_, j) => j !== i)).map((rest) => [value, ...rest]));
}

/** Pairs that rise less pairs that fall, counted one by one. */
function scoreByHand(times: readonly number[], values: readonly number[]): number {
  let score = 0;
  for (const [i, a] of times.entries()) for (const [j, b] of times.entries()) if (a < b) score += Math.sign((values[j] as number) - (values[i] as number));
  return score;
}

// Kendall, Rank Correlation Methods, 1970: where there is no trend every order of the values is as likely as any other,
// and his variance with ties in both is that of the score over all orders. Here every order is tried.
describe('the variance of the score is that over all orders of the values', () => {
  test.each<[readonly number[], readonly number[]]>([
    [[1, 2], [3, 4]],
    [[1, 2, 3], [3, 4, 5]],
    [[1, 1, 2], [4, 4, 5]],
    [[1, 2, 3, 4], [2, 2, 5, 5]],
    [[1, 1, 2, 2], [3, 4, 5, 5]],
    [[1, 1, 1, 2], [3, 3, 3, 5]],
    [[1, 1, 2, 3, 3], [3, 3, 3, 5, 5]],
    [[1, 1, 1, 2, 2, 4], [7, 7, 7, 8, 9, 9]],
    [[1, 1, 1, 1, 2, 3], [7, 7, 7, 7, 8, 8]],
  ])('times %j, values %j', (times, values) => {
    const scores = orders(values).map((order) => scoreByHand(times, order));
    const mean = scores.reduce((sum, one) => sum + one, 0) / scores.length;
    expect(mean).toBeCloseTo(0, 12);
    const found = trendOf(times, values);
    expect(found?.variance).toBeCloseTo(scores.reduce((sum, one) => sum + one * one, 0) / scores.length, 10);
    expect(found?.score).toBe(scoreByHand(times, values));
  });
});

test('a trend is the same whichever way time is told', () => {
  // By hand: of the six pairs the two of one day are left out; slopes 1, 1, 2, 2 and 3, the middle 2.
  expect(trendOf([1, 2, 2, 3], [4, 5, 6, 8])).toMatchObject({ slope: 2, score: 5 });
  expect(trendOf([3, 2, 2, 1], [8, 6, 5, 4])).toMatchObject({ slope: 2, score: 5 });
});
