import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { precedenceTimes } from '../../../src/weigh/schedule/bounds.js';
import { layOut, type Layout, type PlanTask } from '../../../src/weigh/schedule/plan-task.js';
import { listByPriority, predecessorsFirst, PRIORITY_RULES, rankedByKey } from '../../../src/weigh/schedule/priority.js';
import { counted, randomTasks } from './random-tasks.js';

const work = (duration: number, ...after: number[]): PlanTask => ({ id: `work ${duration}`, after, kind: 'work', duration });

function laidOut(tasks: readonly PlanTask[]): Layout {
  const layout = layOut(tasks, 1);
  if (layout.kind !== 'laid-out') throw new Error(layout.kind);
  return layout;
}

const keys = (tasks: readonly PlanTask[]) => {
  const layout = laidOut(tasks);
  const times = precedenceTimes(layout);
  const [lateFinish, lateStart, slack, successors, rankWeight, length, ...others] = PRIORITY_RULES.map((rule) => [...rule(layout, times)]);
  return { lateFinish, lateStart, slack, successors, rankWeight, length, others };
};

// By hand: a 3, then b 4 and c 2 beside each other, d 1 after both and e 5 after c. The finish is 10, through a, c and e.
const network = [work(3), work(4, 0), work(2, 0), work(1, 1, 2), work(5, 2)];

// Rules as Kolisch names them (European Journal of Operational Research 90, 1996, from memory); keys worked by hand, smaller first.
describe('the keys of the priority rules', () => {
  test('late finish, late start and slack', () => {
    expect(keys(network)).toMatchObject({ lateFinish: [3, 9, 5, 10, 10], lateStart: [0, 5, 3, 9, 5], slack: [0, 2, 0, 2, 0], others: [] });
  });

  test('how many come after, in all', () => {
    expect(keys(network).successors).toEqual([-4, -1, -2, -0, -0]);
  });

  test('a task’s length with those right after it', () => {
    expect(keys(network).rankWeight).toEqual([-9, -5, -8, -1, -5]);
  });

  test('length alone', () => {
    expect(keys(network).length).toEqual([-3, -4, -2, -1, -5]);
  });
});

describe('a list by keys', () => {
  const list = (tasks: readonly PlanTask[], by: readonly number[]) => [...listByPriority(laidOut(tasks), Float64Array.from(by))];

  test('takes the smallest key of what may begin', () => {
    expect(list(network, [9, 3, 2, 1, 0])).toEqual([0, 2, 4, 1, 3]);
    expect(list(network, [9, 1, 2, 0, 3])).toEqual([0, 1, 2, 3, 4]);
  });

  test('takes the order of the table where keys are equal', () => {
    expect(list([work(1), work(1), work(1), work(1)], [5, 4, 4, 4])).toEqual([1, 2, 3, 0]);
  });

  test('takes what counts before what does not, whatever the keys', () => {
    expect(list([{ ...work(1), counts: false }, work(1), work(1)], [0, 8, 7])).toEqual([2, 1, 0]);
  });

  // By the definition of the serial scheme's list (Kolisch 1996, from memory), one look for the next after the other.
  test('is the first that may begin, again and again, and the same from any order that is thought near', () => {
    fc.assert(fc.property(randomTasks(9), fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 9, maxLength: 9 }), fc.infiniteStream(fc.nat()), (tasks, by, dice) => {
      const layout = laidOut(tasks);
      const counts = counted(tasks);
      const left = tasks.map((_, i) => i);
      const wanted: number[] = [];
      while (left.length > 0) {
        const open = left.filter((i) => (tasks[i] as PlanTask).after.every((before) => wanted.includes(before)));
        const [next] = open.sort((a, b) => Number(counts[b]) - Number(counts[a]) || (by[a] as number) - (by[b] as number) || a - b) as [number, ...number[]];
        wanted.push(next);
        left.splice(left.indexOf(next), 1);
      }
      const near = tasks.map((_, i) => ({ i, at: dice.next().value as number })).sort((a, b) => a.at - b.at).map(({ i }) => i);
      const keysOfTasks = Float64Array.from(by.slice(0, tasks.length));
      expect([...listByPriority(layout, keysOfTasks)]).toEqual(wanted);
      expect([...predecessorsFirst(layout, rankedByKey(layout, keysOfTasks, Int32Array.from(near)))]).toEqual(wanted);
    }), { numRuns: 500 });
  });
});
