import { describe, expect, test } from 'vitest';
import { criticalPath, type PlanTask } from '../../../src/weigh/schedule/index.js';
import { layOut } from '../../../src/weigh/schedule/plan-task.js';
import { table } from './published.js';

const work = (id: string, ...after: number[]): PlanTask => ({ id, after, kind: 'work', duration: 1 });

describe('tasks that wait for each other', () => {
  test('are told without those that only wait for the circle', () => {
    expect(layOut([work('after it', 1), work('b', 2), work('c', 1)], 1)).toEqual({ kind: 'circle', ids: ['b', 'c'] });
    expect(layOut([work('last', 1), work('after it', 4), work('b', 4), work('c', 2), work('d', 3)], 1)).toEqual({ kind: 'circle', ids: ['b', 'c', 'd'] });
  });

  test('are told without those that the circle waits for', () => {
    expect(layOut([work('before it'), work('b', 0, 2), work('c', 1)], 1)).toEqual({ kind: 'circle', ids: ['b', 'c'] });
  });

  test('one that waits for itself is a circle', () => {
    expect(layOut([work('a', 0)], 1)).toEqual({ kind: 'circle', ids: ['a'] });
  });
});

test('critical activities stand by their early start, whatever the order of the table', () => {
  // By hand: two chains of 10, a 1 c 9 and b 6 d 4: all critical, starting at 0, 0, 1 and 6.
  const plan = criticalPath(table('d b 4; b - 6; c a 9; a - 1'));
  expect(plan).toMatchObject({ kind: 'planned', finish: 10, critical: ['b', 'a', 'c', 'd'] });
});
