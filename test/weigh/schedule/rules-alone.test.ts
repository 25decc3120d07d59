import { describe, expect, test } from 'vitest';
import { type BayPlan, type PlanTask } from '../../../src/weigh/schedule/index.js';
import { planTasks } from '../../support/plan-tasks.js';

const work = (duration: number, ...after: number[]): PlanTask => ({ id: `work ${duration}`, after, kind: 'work', duration });
const wait = (duration: number, ...after: number[]): PlanTask => ({ id: `wait ${duration}`, after, kind: 'wait', duration });

function byRules(tasks: readonly PlanTask[], technicians: number): BayPlan {
  const plan = planTasks(tasks, technicians, 'rules');
  if (plan.kind !== 'planned') throw new Error(plan.kind);
  return plan;
}

describe('without a search', () => {
  // Graham, SIAM Journal on Applied Mathematics 17(2), 1969 (from memory, recomputed): 3 3 2 2 2 by two technicians.
  test('the worst case of longest-first is left at 7, and says that 6 may be possible', () => {
    const tasks = [3, 3, 2, 2, 2].map((duration) => work(duration));
    expect(byRules(tasks, 2)).toMatchObject({ makespan: 7, lowerBound: 6, proven: false, gap: 1 });
    expect(planTasks(tasks, 2)).toMatchObject({ makespan: 6, lowerBound: 6, proven: true, gap: 0 });
  });

  test('the longest piece first is found where the order of the table is later', () => {
    // By hand: 2 and 2, then 4, is 6; 4 beside 2 and 2 is 4, which is all there is to share.
    expect(byRules([work(2), work(2), work(4)], 2)).toMatchObject({ makespan: 4, proven: true, gap: 0 });
  });

  test('a later rule that does no better leaves the plan of the first', () => {
    const tasks = [3, 3, 2, 2, 2].map((duration) => work(duration));
    expect([...byRules(tasks, 2).order]).toEqual([0, 1, 2, 3, 4]);
  });

  test('what the first rule proves is left as it is, though others would do as well', () => {
    // By hand: by late finish the second piece goes first, since 9 come after it.
    const plan = byRules([work(2), work(1), wait(9, 1)], 1);
    expect(plan).toMatchObject({ makespan: 10, proven: true });
    expect(plan.tasks.map(({ start }) => start)).toEqual([1, 0, 1]);
  });
});

describe('who does what', () => {
  const technicians = (tasks: readonly PlanTask[], count: number) => byRules(tasks, count).tasks.map(({ technician }) => technician);

  test('goes on with what follows from one’s own piece', () => {
    // By hand: 1 and 2 begin together; what follows the second is done by the second technician, who is free then.
    expect(technicians([work(2), work(2), work(3, 1), work(3, 0)], 2)).toEqual([0, 1, 1, 0]);
  });

  test('is the lowest who is free, where nobody has a piece to go on with', () => {
    // Of two that begin together the shorter one is the first technician's (own rule).
    expect(technicians([work(4), work(1), wait(1, 1), work(1, 2)], 2)).toEqual([1, 0, undefined, 0]);
    expect(technicians([work(1), work(4), wait(1, 0), work(1, 2)], 2)).toEqual([0, 1, undefined, 0]);
  });

  test('is nobody for a wait and for work of no length', () => {
    expect(technicians([work(0), wait(3), work(1)], 1)).toEqual([undefined, undefined, 0]);
  });
});

test('the finish hangs on what counts, though something else ends at the same moment', () => {
  const plan = byRules([{ ...wait(5), counts: false }, work(5)], 1);
  expect(plan.chain).toEqual([{ task: 1, waitsFor: 'start' }]);
});
