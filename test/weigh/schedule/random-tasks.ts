import fc from 'fast-check';
import { expect } from 'vitest';
import { type BayPlan, type PlanTask } from '../../../src/weigh/schedule/index.js';
import { planTasks } from '../../support/plan-tasks.js';

/** A shop that is open for two units and then closed for three; plans are on the axis of its open time alone. */
const OPEN = 2;
const CLOSED = 3;

/** When a wait by the calendar is over, in open time: what ends while the shop is closed ends as it opens. */
export function calendarEnd(start: number, duration: number): number {
  const begun = start + CLOSED * Math.floor(start / OPEN);
  const over = begun + duration;
  const round = Math.floor(over / (OPEN + CLOSED));
  return round * OPEN + Math.min(OPEN, over - round * (OPEN + CLOSED));
}

/** Small whole durations, so that gaps fit and ties are common; some waits go by the calendar, some tasks do not count. */
export function randomTasks(most: number): fc.Arbitrary<readonly PlanTask[]> {
  return fc.integer({ min: 0, max: most }).chain((count) => fc.tuple(...Array.from({ length: count }, (_, i): fc.Arbitrary<PlanTask> => fc.record({
    id: fc.constant(`t${i}`),
    after: i === 0 ? fc.constant([]) : fc.array(fc.integer({ min: 0, max: i - 1 }), { maxLength: 2 }),
    kind: fc.constantFrom('work' as const, 'work' as const, 'work' as const, 'wait' as const),
    duration: fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 6, arbitrary: fc.integer({ min: 1, max: 4 }) }),
    byCalendar: fc.boolean(),
    counts: fc.constantFrom(true, true, true, true, false),
  }).map(({ byCalendar, ...task }) => (byCalendar && task.kind === 'wait' ? { ...task, endsAt: calendarEnd } : task)))));
}

/** Chains of work and waits that compete for the technicians: here the rules often miss the least finish. */
export const competingTasks: fc.Arbitrary<readonly PlanTask[]> = fc.array(fc.record({
  lengths: fc.tuple(fc.nat({ max: 5 }), fc.integer({ min: 1, max: 4 }), fc.nat({ max: 5 }), fc.integer({ min: 1, max: 4 }), fc.nat({ max: 5 })),
  /** The waits after work: as long as they are, by the calendar, or over at a date, such as a delivery. */
  later: fc.constantFrom(undefined, calendarEnd, (start: number, duration: number) => Math.max(start, 3 * duration)),
  /** The second work of the chain also comes after the first of the chain before. */
  linked: fc.boolean(),
}), { minLength: 2, maxLength: 3 }).map((chains) => chains.flatMap(({ lengths, later, linked }, chain) => lengths.map((duration, i): PlanTask => {
  const here = 5 * chain + i;
  const task: PlanTask = { id: `t${here}`, after: i === 0 ? [] : i === 3 && linked && chain > 0 ? [here - 1, here - 7] : [here - 1], kind: i % 2 === 0 ? 'wait' : 'work', duration };
  return i % 2 === 0 && i > 0 && later !== undefined ? { ...task, endsAt: later } : task;
})));

/** The same tasks with the table backwards, so that predecessors stand behind. */
export function backwards(tasks: readonly PlanTask[]): PlanTask[] {
  return tasks.map((task) => ({ ...task, after: task.after.map((one) => tasks.length - 1 - one) })).reverse();
}

export function planOf(tasks: readonly PlanTask[], technicians: number): BayPlan {
  const plan = planTasks(tasks, technicians);
  if (plan.kind !== 'planned') throw new Error(JSON.stringify(plan));
  return plan;
}

/** Whether a task counts: it says so, or one that counts comes after it. */
export function counted(tasks: readonly PlanTask[]): boolean[] {
  const counts = tasks.map((task) => task.counts !== false);
  for (let round = 0; round < tasks.length; round++) tasks.forEach((task, i) => { if (counts[i] === true) for (const before of task.after) counts[before] = true; });
  return counts;
}

export function endOf(task: PlanTask, start: number): number {
  return task.kind === 'wait' && task.endsAt !== undefined ? task.endsAt(start, task.duration) : start + task.duration;
}

/** Checks everything a plan must keep to, from the tasks alone. */
export function expectSound(tasks: readonly PlanTask[], technicians: number, plan: BayPlan): void {
  expect(plan.tasks).toHaveLength(tasks.length);
  let finish = 0;
  const isCounted = counted(tasks);
  for (const [i, task] of tasks.entries()) {
    const { start, end, technician } = plan.tasks[i] as BayPlan['tasks'][number];
    expect(start).toBeGreaterThanOrEqual(0);
    expect(end).toBe(endOf(task, start));
    for (const before of task.after) expect(start).toBeGreaterThanOrEqual((plan.tasks[before] as { end: number }).end);
    if (isCounted[i] === true) finish = Math.max(finish, end);
    expect(technician !== undefined).toBe(task.kind === 'work' && task.duration > 0);
    if (technician === undefined) continue;
    expect(technician).toBeGreaterThanOrEqual(0);
    expect(technician).toBeLessThan(technicians);
    expect(plan.tasks.filter((other, j) => j !== i && other.technician === technician && other.start < end && other.end > start)).toEqual([]);
  }
  expect(plan.makespan).toBe(finish);
  expect(plan.lowerBound).toBeLessThanOrEqual(plan.makespan);
  expect(plan.gap).toBe(plan.makespan - plan.lowerBound);
  if (plan.proven) expect(plan.gap).toBe(0);
  expect([...plan.order].sort((a, b) => a - b)).toEqual([...tasks.keys()]);
  expectChain(tasks, plan);
}

function expectChain(tasks: readonly PlanTask[], plan: BayPlan): void {
  const { chain } = plan;
  if (tasks.length === 0 || plan.makespan === 0) return;
  chain.forEach(({ task, waitsFor }, at) => {
    const now = plan.tasks[task] as BayPlan['tasks'][number];
    const link = chain[at - 1];
    expect(waitsFor === 'start').toBe(link === undefined);
    if (link === undefined) {
      expect(now.start).toBe(0);
      return;
    }
    const then = plan.tasks[link.task] as BayPlan['tasks'][number];
    expect(then.end).toBe(now.start);
    if (waitsFor === 'after') expect((tasks[task] as PlanTask).after).toContain(link.task);
    else expect(then.technician).toBe(now.technician);
  });
  expect((plan.tasks[(chain[chain.length - 1] as { task: number }).task] as { end: number }).end).toBe(plan.makespan);
}

/**
 * Whether some plan finishes by then, by trying every whole-numbered start of every piece of work: no lists, no rules.
 * For whole durations whole starts are enough. Waits start at once.
 */
export function canFinishBy(tasks: readonly PlanTask[], technicians: number, limit: number): boolean {
  const isCounted = counted(tasks);
  const ends = new Array<number>(tasks.length).fill(0);
  const busy = new Array<number>(Math.max(0, Math.ceil(limit)) + 1).fill(0);
  const from = (i: number): boolean => {
    const task = tasks[i];
    if (task === undefined) return true;
    if (isCounted[i] === false) return from(i + 1);
    const ready = Math.max(0, ...task.after.map((before) => ends[before] as number));
    if (task.kind === 'wait' || task.duration === 0) {
      ends[i] = endOf(task, ready);
      return ends[i] <= limit && from(i + 1);
    }
    for (let start = ready; start + task.duration <= limit; start++) {
      const hours = Array.from({ length: task.duration }, (_, k) => start + k);
      if (hours.some((hour) => (busy[hour] as number) >= technicians)) continue;
      for (const hour of hours) busy[hour] = (busy[hour] as number) + 1;
      ends[i] = start + task.duration;
      const done = from(i + 1);
      for (const hour of hours) busy[hour] = (busy[hour] as number) - 1;
      if (done) return true;
    }
    return false;
  };
  return from(0);
}
