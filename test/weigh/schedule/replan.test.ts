import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileOrder, type PlanTask } from '../../../src/weigh/schedule/index.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { backwards, counted, endOf, planOf, randomTasks } from './random-tasks.js';

/** The finish of a list by the plainest serial generation: every end is tried as a start, every task counted anew. */
function plainly(tasks: readonly PlanTask[], order: readonly number[], durations: readonly number[], technicians: number): number {
  const placed: { start: number; end: number; holds: boolean }[] = [];
  for (const i of order) {
    const task = { ...(tasks[i] as PlanTask), duration: durations[i] as number };
    const ready = Math.max(0, ...task.after.map((before) => (placed[before] as { end: number }).end));
    const holds = task.kind === 'work' && task.duration > 0;
    const busy = (from: number, to: number): number => Math.max(0, ...[from, ...Object.values(placed).map(({ start }) => start)].filter((at) => at >= from && at < to).map((at) => Object.values(placed).filter((one) => one.holds && one.start <= at && at < one.end).length));
    const candidates = [ready, ...Object.values(placed).map(({ end }) => end).filter((end) => end > ready)].sort((a, b) => a - b);
    const start = holds ? (candidates.find((at) => busy(at, at + task.duration) < technicians) as number) : ready;
    placed[i] = { start, end: endOf(task, start), holds };
  }
  return Math.max(0, ...counted(tasks).flatMap((counts, i) => (counts ? [(placed[i] as { end: number }).end] : [])));
}

const technicians = fc.constantFrom(1, 2, 3, Infinity);

describe('a compiled order', () => {
  it('gives the plan of its order to the last bit (random tasks, decimal durations)', PATIENT, () => {
    fc.assert(fc.property(randomTasks(20), technicians, (whole, m) => {
      const tasks = backwards(whole).map((task) => ({ ...task, duration: task.duration * 0.7 }));
      const plan = planOf(tasks, m);
      expect(compileOrder(tasks, plan.order, m)(Float64Array.from(tasks, ({ duration }) => duration))).toBe(plan.makespan);
    }), runs(31, 100));
  });

  it('gives with other durations what plain serial generation gives (random tasks)', PATIENT, () => {
    fc.assert(fc.property(randomTasks(12), technicians, fc.array(fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 12, maxLength: 12 }), { minLength: 3, maxLength: 3 }), (tasks, m, draws) => {
      const order = [...planOf(tasks, m).order];
      const finish = compileOrder(tasks, order, m);
      // Drawn in turn, so that nothing of one sample is left in the next.
      for (const draw of [...draws, ...draws]) expect(finish(Float64Array.from(draw))).toBe(plainly(tasks, order, draw, m));
    }), runs(32, 80));
  });

  it('finishes no later with shorter tasks and technicians without end (random tasks)', () => {
    fc.assert(fc.property(randomTasks(12), fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 12, maxLength: 12 }), fc.nat({ max: 11 }), (tasks, draw, at) => {
      const finish = compileOrder(tasks, planOf(tasks, Infinity).order, Infinity);
      expect(finish(Float64Array.from(draw, (value, i) => (i === at ? value / 2 : value)))).toBeLessThanOrEqual(finish(Float64Array.from(draw)));
    }), runs(33, 80));
  });

  it('has no not-a-number for nothing, not-a-number or without end', () => {
    const tasks = Array.from({ length: 6 }, (_, i): PlanTask => ({ id: `${i}`, after: i < 2 ? [] : [i - 2], kind: i === 3 ? 'wait' : 'work', duration: 1 }));
    const finish = compileOrder(tasks, [0, 1, 2, 3, 4, 5], 1);
    expect(finish(new Float64Array(6))).toBe(0);
    expect(finish(new Float64Array(6).fill(NaN))).toBe(0);
    expect(finish(new Float64Array(6).fill(Infinity))).toBe(Infinity);
    expect(finish(new Float64Array(6).fill(1))).toBe(5);
  });

  it('refuses an order that is none', () => {
    const tasks: PlanTask[] = [{ id: 'a', after: [], kind: 'work', duration: 1 }, { id: 'b', after: [0], kind: 'work', duration: 1 }];
    for (const order of [[1, 0], [0], [0, 0], [0, 1, 2]]) expect(() => compileOrder(tasks, order, 1)).toThrow(RangeError);
    expect(() => compileOrder(tasks, [0, 1], 0)).toThrow(RangeError);
  });
});
