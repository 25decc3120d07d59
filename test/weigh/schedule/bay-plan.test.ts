import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { compileOrder, criticalPath, LONGEST, MOST_WORK, type PlanTask } from '../../../src/weigh/schedule/index.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { backwards, calendarEnd, canFinishBy, competingTasks, counted, endOf, expectSound, planOf, randomTasks } from './random-tasks.js';
import { planTasks } from '../../support/plan-tasks.js';

const technicians = fc.integer({ min: 1, max: 3 });
const work = (duration: number, ...after: number[]): PlanTask => ({ id: `work ${duration}`, after, kind: 'work', duration });
const wait = (duration: number, ...after: number[]): PlanTask => ({ id: `wait ${duration}`, after, kind: 'wait', duration });

/** The longest way through the tasks that count, with technicians without end. */
function longestWay(tasks: readonly PlanTask[]): number {
  const isCounted = counted(tasks);
  const ends: number[] = [];
  tasks.forEach((task) => ends.push(endOf(task, Math.max(0, ...task.after.map((before) => ends[before] as number)))));
  return Math.max(0, ...ends.filter((_, i) => isCounted[i]));
}

/** All work that counts. */
function hoursOf(tasks: readonly PlanTask[]): number {
  const isCounted = counted(tasks);
  return tasks.reduce((sum, { kind, duration }, i) => (isCounted[i] === true && kind === 'work' ? sum + duration : sum), 0);
}

describe('published cases', () => {
  // Graham, SIAM Journal on Applied Mathematics 17(2), 1969 (from memory, recomputed): 2m + 1 jobs for which the
  // longest-first rule takes 4m − 1 where 3m is possible.
  test.each([2, 3, 4])('the worst case of longest-first with %d technicians is planned at its least', (m) => {
    const durations = [...Array.from({ length: m - 1 }, (_, i) => [2 * m - 1 - i, 2 * m - 1 - i]).flat(), m, m, m];
    expect(durations).toHaveLength(2 * m + 1);
    expect(planOf(durations.map((duration) => work(duration)), m)).toMatchObject({ makespan: 3 * m, proven: true });
  });

  // The same paper: nine jobs (lengths and precedence from memory). More technicians, shorter jobs or fewer
  // links make its list rule later: 12 becomes 15, 13 and 16. The least finish is the critical path (computed).
  it('does better with more of everything in the anomaly case', () => {
    const nine = (less: number, links: readonly number[]): PlanTask[] => [3, 2, 2, 2, 4, 4, 4, 4, 9].map((duration, i) => work(duration - less, ...(i === 8 ? [0] : links.includes(i) ? [3] : [])));
    expect(planOf(nine(0, [4, 5, 6, 7]), 3)).toMatchObject({ makespan: 12, proven: true });
    expect(planOf(nine(0, [4, 5, 6, 7]), 4)).toMatchObject({ makespan: 12, proven: true });
    expect(planOf(nine(1, [4, 5, 6, 7]), 3)).toMatchObject({ makespan: 10, proven: true });
    expect(planOf(nine(0, [6, 7]), 3)).toMatchObject({ makespan: 12, proven: true });
  });

  // Carlier, European Journal of Operational Research 11, 1982: seven jobs with heads and tails on one machine
  // (from memory, recomputed by trying all orders): 50, where the longest-tail rule gives 53.
  it('finds the least of the one-machine case with heads and tails', () => {
    const jobs = [[10, 5, 7], [13, 6, 26], [11, 7, 24], [20, 4, 21], [30, 3, 8], [0, 6, 17], [30, 2, 0]] as const;
    const orders = (left: readonly number[]): number[][] => (left.length === 0 ? [[]] : left.flatMap((i) => orders(left.filter((j) => j !== i)).map((rest) => [i, ...rest])));
    const finish = (order: readonly number[]): number => {
      let now = 0;
      return order.reduce((last, i) => {
        const [head, length, tail] = jobs[i] as (typeof jobs)[number];
        now = Math.max(now, head) + length;
        return Math.max(last, now + tail);
      }, 0);
    };
    expect(finish([5, 0, 1, 2, 3, 4, 6])).toBe(53);
    const least = Math.min(...orders([0, 1, 2, 3, 4, 5, 6]).map(finish));
    expect(least).toBe(50);
    const tasks = jobs.flatMap(([head, length, tail], i) => [wait(head), work(length, 3 * i), wait(tail, 3 * i + 1)]);
    const plan = planOf(tasks, 1);
    expectSound(tasks, 1, plan);
    expect(plan).toMatchObject({ makespan: least, proven: true });
  });

  // Jackson's rule: one machine, tails only: longest tail first (Jackson 1955; from memory).
  it('agrees with the longest-tail rule', () => {
    fc.assert(fc.property(fc.array(fc.record({ length: fc.integer({ min: 1, max: 9 }), tail: fc.integer({ min: 0, max: 30 }) }), { minLength: 1, maxLength: 9 }), (jobs) => {
      let now = 0;
      const least = jobs.toSorted((a, b) => b.tail - a.tail).reduce((last, { length, tail }) => Math.max(last, (now += length) + tail), 0);
      expect(planOf(jobs.flatMap(({ length, tail }, i) => [work(length), wait(tail, 2 * i)]), 1)).toMatchObject({ makespan: least, proven: true });
    }), runs(21, 100));
  });

  // Hu, Operations Research 9(6), 1961 (from memory): pieces of one length, each with one successor at most: the
  // highest level first is best.
  it('agrees with the highest-level rule on trees of equal pieces', PATIENT, () => {
    const trees = fc.integer({ min: 1, max: 12 }).chain((count) => fc.tuple(...Array.from({ length: count }, (_, i) => (i === 0 ? fc.constant(-1) : fc.integer({ min: 0, max: i - 1 })))));
    fc.assert(fc.property(trees, fc.integer({ min: 1, max: 3 }), (parents, m) => {
      const level = parents.reduce<number[]>((levels, parent) => [...levels, parent < 0 ? 0 : (levels[parent] as number) + 1], []);
      const doneAt = new Array<number>(parents.length).fill(Infinity);
      let now = 0;
      for (; doneAt.includes(Infinity); now++) {
        const open = parents.map((_, i) => i).filter((i) => doneAt[i] === Infinity && parents.every((parent, j) => parent !== i || (doneAt[j] as number) <= now));
        for (const i of open.sort((a, b) => (level[b] as number) - (level[a] as number)).slice(0, m)) doneAt[i] = now + 1;
      }
      const tasks = parents.map((_, i) => work(1, ...parents.flatMap((parent, j) => (parent === i ? [j] : []))));
      expect(planOf(tasks, m)).toMatchObject({ makespan: now, proven: true });
    }), runs(22, 80));
  });
});

describe('every plan', () => {
  it('keeps to precedence and to the technicians, and says what it hangs on (random tasks)', PATIENT, () => {
    let unproven = 0;
    let kept = 0;
    fc.assert(fc.property(randomTasks(16), technicians, (tasks, m) => {
      const table = backwards(tasks);
      const plan = planOf(table, m);
      expectSound(table, m, plan);
      if (!plan.proven) unproven++;
      if (plan.chain.some(({ waitsFor }) => waitsFor === 'technician')) kept++;
      const hours = hoursOf(tasks);
      expect(plan.makespan).toBeGreaterThanOrEqual(longestWay(tasks));
      expect(plan.makespan).toBeGreaterThanOrEqual(hours / m);
      expect(plan.lowerBound).toBeGreaterThanOrEqual(Math.max(longestWay(tasks), hours / m));
    }), runs(23, 120));
    expect(kept).toBeGreaterThan(20);
    expect(unproven).toBeLessThan(10);
  });

  it('is the earliest of all (random tasks, every whole start tried)', PATIENT, () => {
    let above = 0;
    fc.assert(fc.property(fc.oneof({ weight: 1, arbitrary: randomTasks(8) }, { weight: 3, arbitrary: competingTasks }), technicians, (tasks, m) => {
      const plan = planOf(tasks, m);
      expectSound(tasks, m, plan);
      expect(plan.proven).toBe(true);
      if (plan.makespan > Math.max(longestWay(tasks), Math.ceil(hoursOf(tasks) / m))) above++;
      expect(canFinishBy(tasks, m, plan.makespan)).toBe(true);
      if (plan.makespan > 0) expect(canFinishBy(tasks, m, plan.makespan - 1)).toBe(false);
    }), runs(24, 200));
    expect(above).toBeGreaterThan(20);
  });

  it('is often earlier than taking the chains in turn, and never later (random tasks)', PATIENT, () => {
    let better = 0;
    fc.assert(fc.property(competingTasks, fc.integer({ min: 1, max: 2 }), (tasks, m) => {
      const { makespan } = planOf(tasks, m);
      const durations = Float64Array.from(tasks, ({ duration }) => duration);
      const inTurn = compileOrder(tasks, [...tasks.keys()].sort((a, b) => (a % 5) - (b % 5) || a - b), m)(durations);
      expect(makespan).toBeLessThanOrEqual(inTurn);
      if (makespan < inTurn) better++;
    }), runs(28, 200));
    expect(better).toBeGreaterThan(30);
  });

  it('with technicians without end is the critical path (random tasks)', () => {
    fc.assert(fc.property(randomTasks(14), (tasks) => {
      for (const m of [Infinity, Math.max(1, tasks.length)]) {
        const plan = planOf(tasks, m);
        expect(plan).toMatchObject({ makespan: longestWay(tasks), lowerBound: longestWay(tasks), proven: true });
        expect(plan.chain.every(({ waitsFor }) => waitsFor !== 'technician')).toBe(true);
      }
      const plain = tasks.map(({ id, after, kind, duration }): PlanTask => ({ id, after, kind, duration }));
      const network = criticalPath(plain.map(({ id, after, duration }) => ({ id, after: after.map((i) => `t${i}`), duration: { low: duration, likely: duration, high: duration } })));
      expect(network.kind === 'planned' && network.finish).toBe(planOf(plain, Infinity).makespan);
    }), runs(25, 80));
  });

  it('gets no later with one more technician, a shorter task or a link less, where proven (random tasks)', PATIENT, () => {
    fc.assert(fc.property(randomTasks(9), technicians, fc.nat(), (tasks, m, pick) => {
      const { makespan, proven } = planOf(tasks, m);
      const at = pick % Math.max(1, tasks.length);
      const changed = (change: (task: PlanTask) => PlanTask): PlanTask[] => tasks.map((task, i) => (i === at ? change(task) : task));
      for (const other of [planOf(tasks, m + 1), planOf(changed((task) => ({ ...task, duration: Math.max(0, task.duration - 1) })), m), planOf(changed((task) => ({ ...task, counts: true, after: [] })), m)]) {
        if (proven && other.proven && counted(tasks)[at] === true) expect(other.makespan).toBeLessThanOrEqual(makespan);
      }
    }), runs(26, 100));
  });

  it('is not delayed by what does not count (random tasks)', () => {
    fc.assert(fc.property(randomTasks(9), technicians, (tasks, m) => {
      const isCounted = counted(tasks);
      const plan = planOf(tasks, m);
      const alone = planOf(tasks.map((task, i) => (isCounted[i] === true ? task : { ...task, duration: 0, kind: 'wait' as const })), m);
      expect(plan.makespan).toBe(alone.makespan);
      tasks.forEach((_, i) => { if (isCounted[i] === true) expect(plan.tasks[i]?.start).toBe(alone.tasks[i]?.start); });
    }), runs(27, 120));
  });
});

describe('a plan of the bay', () => {
  it('works on something else while it waits', () => {
    // Take the head off, send it out, clean the block meanwhile, put the head on.
    const tasks = [work(3), wait(10, 0), work(4, 0), work(5, 1, 2)];
    const plan = planOf(tasks, 1);
    expect(plan.tasks.map(({ start, end }) => [start, end])).toEqual([[0, 3], [3, 13], [3, 7], [13, 18]]);
    expect(plan.chain).toEqual([{ task: 0, waitsFor: 'start' }, { task: 1, waitsFor: 'after' }, { task: 3, waitsFor: 'after' }]);
  });

  it('says where a technician is what is missing', () => {
    const tasks = [work(3), work(4), wait(1, 1)];
    const plan = planOf(tasks, 1);
    expect(plan).toMatchObject({ makespan: 7, proven: true });
    expect(plan.chain).toEqual([{ task: 1, waitsFor: 'start' }, { task: 0, waitsFor: 'technician' }]);
  });

  it('lets a wait by the calendar run over closed hours', () => {
    // Open 2, closed 3: from 1, four units later is 5 on the clock, which is when the shop opens again: 2 in open time.
    expect(calendarEnd(1, 4)).toBe(2);
    const tasks: PlanTask[] = [work(1), { ...wait(4, 0), endsAt: calendarEnd }, work(1, 1)];
    expect(planOf(tasks, 1).tasks.map(({ end }) => end)).toEqual([1, 2, 3]);
  });

  it('takes an end before the start, or none, for the start', () => {
    for (const wrong of [-5, NaN]) expect(planOf([work(2), { ...wait(1, 0), endsAt: () => wrong }, work(1, 1)], 1).makespan).toBe(3);
  });

  it('may hold nothing', () => {
    const { kind, tasks, makespan, lowerBound, proven, gap, order, chain } = planOf([], 1);
    expect({ kind, tasks, makespan, lowerBound, proven, gap, order: [...order], chain }).toEqual({ kind: 'planned', tasks: [], makespan: 0, lowerBound: 0, proven: true, gap: 0, order: [], chain: [] });
  });

  it('states the gap where there is too much work to search', () => {
    // Hours that no technician can share evenly: 3 each for two, with an odd number of pieces.
    const tasks = Array.from({ length: MOST_WORK + 1 }, () => work(3));
    const plan = planOf(tasks, 2);
    expectSound(tasks, 2, plan);
    expect(plan).toMatchObject({ makespan: 39, lowerBound: 37.5, proven: false, gap: 1.5 });
  });

  it('has no not-a-number for nothing or for the longest duration', () => {
    for (const size of [0, LONGEST]) for (const m of [1, 2, Infinity]) {
      const tasks = [work(size), work(size, 0), wait(size, 0), work(1, 1, 2), work(0, 3), work(size)];
      const plan = planOf(tasks, m);
      for (const value of [plan.makespan, plan.lowerBound, plan.gap, ...plan.tasks.flatMap(({ start, end }) => [start, end])]) expect(Number.isFinite(value)).toBe(true);
      expect(plan.makespan).toBe((m === 1 ? 3 : 2) * size + 1);
    }
  });

  it('with a piece so short beside what stands before it that its end is its start: nobody waits for it, and the chain ends', () => {
    // Doubles near 1e15 lie an eighth apart (IEEE 754).
    const plan = planOf([wait(LONGEST / 2), work(0.01, 0), work(LONGEST)], 1);
    expect(plan.makespan).toBe(LONGEST);
    expect(plan.chain).toEqual([{ task: 2, waitsFor: 'start' }]);
  });
});

describe('tasks with a fault', () => {
  test.each([
    [[work(1)], 0, { kind: 'no-technician' }],
    [[work(1)], 1.5, { kind: 'no-technician' }],
    [[work(1)], NaN, { kind: 'no-technician' }],
    [[work(1, 7)], 1, { kind: 'unknown-predecessor', id: 'work 1', predecessor: 7 }],
    [[work(-1)], 1, { kind: 'no-duration', id: 'work -1' }],
    [[work(NaN)], 1, { kind: 'no-duration', id: 'work NaN' }],
    [[wait(2 * LONGEST)], 1, { kind: 'no-duration', id: `wait ${2 * LONGEST}` }],
    [[work(1, 2), work(2, 0), work(3, 1)], 1, { kind: 'circle', ids: ['work 1', 'work 2', 'work 3'] }],
  ])('case %#', (tasks, m, problem) => {
    expect(planTasks(tasks, m)).toEqual(problem);
  });
});
