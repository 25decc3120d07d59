import { describe, expect, test } from 'vitest';
import { precedenceTimes, type PrecedenceTimes } from '../../../src/weigh/schedule/bounds.js';
import { pertMean } from '../../../src/weigh/schedule/index.js';
import { layOut, type Layout, type PlanTask } from '../../../src/weigh/schedule/plan-task.js';
import { leastFinish } from '../../../src/weigh/schedule/search.js';
import { PUBLISHED, type PublishedNetwork } from './published.js';

function laidOut(tasks: readonly PlanTask[], technicians = 1): Layout {
  const layout = layOut(tasks, technicians);
  if (layout.kind !== 'laid-out') throw new Error(layout.kind);
  return layout;
}

const timesOf = (tasks: readonly PlanTask[]): PrecedenceTimes => precedenceTimes(laidOut(tasks));
const work = (duration: number, ...after: number[]): PlanTask => ({ id: `work ${duration}`, after, kind: 'work', duration });
const wait = (duration: number, ...after: number[]): PlanTask => ({ id: `wait ${duration}`, after, kind: 'wait', duration });
const aside = (task: PlanTask): PlanTask => ({ ...task, counts: false });

function tasksOf({ activities }: PublishedNetwork): PlanTask[] {
  return activities.map(({ id, after, duration }) => ({ id, after: after.map((name) => activities.findIndex((one) => one.id === name)), kind: 'work', duration: pertMean(duration) }));
}

describe('times by precedence alone, of published networks', () => {
  test.each(PUBLISHED)('$source: length and slack as printed', (network) => {
    const tasks = tasksOf(network);
    const times = timesOf(tasks);
    expect(times.length).toBeCloseTo(network.finish, 9);
    tasks.forEach(({ id, duration }, i) => {
      expect((times.lateStart[i] as number) - (times.earlyStart[i] as number)).toBeCloseTo(network.slack[id] ?? 0, 9);
      expect((times.lateEnd[i] as number) - (times.lateStart[i] as number)).toBeCloseTo(duration, 9);
      expect((times.earlyEnd[i] as number) - (times.earlyStart[i] as number)).toBeCloseTo(duration, 9);
    });
  });

  // A network run backwards has the same length, and what came after a task comes before it (common practice).
  test.each(PUBLISHED)('$source: what comes after a task is its early start in the network run backwards', (network) => {
    const tasks = tasksOf(network);
    const last = tasks.length - 1;
    const mirrored = [...tasks.keys()].reverse().map((i) => ({ ...(tasks[i] as PlanTask), after: tasks.flatMap(({ after }, j) => (after.includes(i) ? [last - j] : [])) }));
    const backwards = timesOf(mirrored);
    const { tail } = timesOf(tasks);
    tail.forEach((after, i) => expect(after).toBeCloseTo(backwards.earlyStart[last - i] as number, 9));
  });
});

describe('what does not count', () => {
  // By hand: 3 and 4 in a row, and beside them 2 with a wait of 9 behind it that nobody waits for.
  const tasks = [work(3), work(4, 0), work(2), aside(wait(9, 2))];
  const times = timesOf(tasks);

  test('makes the work no longer, and is wanted at the last end of all', () => {
    expect(times.length).toBe(7);
    expect([...times.earlyEnd]).toEqual([3, 7, 2, 11]);
    expect([...times.lateEnd]).toEqual([3, 7, 7, 11]);
  });

  test('adds nothing to what comes after a task', () => {
    expect([...times.tail]).toEqual([4, 0, 0, 0]);
  });
});

test('a wait by the calendar may be over as soon as it begins: it adds to no tail', () => {
  const byCalendar: PlanTask = { ...wait(5, 0), endsAt: (start, duration) => start + duration };
  const times = timesOf([work(2), byCalendar, work(1, 1)]);
  expect([...times.tail]).toEqual([1, 1, 0]);
  expect([...times.earlyEnd]).toEqual([2, 7, 8]);
  expect([...times.lateStart]).toEqual([0, 2, 7]);
});

describe('what no plan can finish before, by hand', () => {
  const floor = (tasks: readonly PlanTask[], technicians: number) => {
    const layout = laidOut(tasks, technicians);
    return leastFinish(layout, precedenceTimes(layout));
  };

  test('the critical path, with technicians enough', () => {
    expect(floor([work(3), work(4, 0), work(5)], 2)).toBe(7);
  });

  test('all work, shared evenly', () => {
    expect(floor([work(3), work(4), work(5)], 1)).toBe(12);
    expect(floor([work(3), work(4), work(5)], 2)).toBe(6);
    expect(floor([work(3), aside(work(40))], 1)).toBe(3);
    expect(floor([wait(30), work(4)], 1)).toBe(30);
  });

  test('a wait before all work comes on top, and a wait after all of it', () => {
    expect(floor([wait(10), work(3, 0), work(4, 0)], 1)).toBe(17);
    expect(floor([work(3), work(4), wait(10, 0), wait(20, 1)], 1)).toBe(24);
    // 6 before, 3 + 4 by one technician, then at least the shorter of 2 and 8.
    expect(floor([wait(6), work(3, 0), work(4, 0), wait(2, 1), wait(8, 2)], 1)).toBe(18);
    expect(floor([wait(6), work(5, 0), work(4, 0), wait(7, 1), wait(6, 2)], 1)).toBe(21);
  });
});
