import type { Estimate } from '../estimate/index.js';
import { Slot } from '../language/index.js';
import { heldByRecords, type Record } from '../vocabulary/index.js';
import type { PlannedWork } from './planned-work.js';
import { retimed, type Arranged } from './retimed.js';
import { layOut, bayPlan, type BayPlan, type Layout, type PlanEffort } from './schedule/index.js';
import type { Task } from './task.js';
import { tasksOf } from './tasks.js';
import { layOutTasks, type ShopTime } from './timetable.js';

/** The tasks of some work and their plan. */
export interface Scheduled {
  readonly tasks: readonly Task[];
  readonly planned: BayPlan;
  /** The titles of tasks that wait for each other where `after` goes round in a circle. */
  readonly circle: readonly string[] | undefined;
}

/** The tasks and their plan; where `after` goes round in a circle, without what it says. */
export function scheduled(work: PlannedWork, turned: readonly PlannedWork[], estimate: Pick<Estimate, 'header'>, time: ShopTime, effort: PlanEffort): Scheduled {
  const { tasks, layout, circle } = arranged(work, turned, estimate, time);
  return { tasks, planned: bayPlan(layout, effort), circle };
}

interface LastTime extends Arranged {
  /** Its tasks by their latest finish. */
  readonly ranked: Int32Array;
}

const lastTimes = new Slot<LastTime>(heldByRecords);

/** The same for an option on its own, of which only the hours of a few jobs may differ from when it was last asked for. */
export function scheduledAgain(option: Record, work: PlannedWork, estimate: Pick<Estimate, 'header'>, time: ShopTime): Scheduled {
  const from = { work, answer: estimate.header?.answer, time };
  const before = lastTimes.get(option);
  const again = before === undefined ? undefined : retimed(before, from);
  const { tasks, layout, circle } = again ?? arranged(work, [], estimate, time);
  const planned = bayPlan(layout, 'search', again === undefined ? undefined : before?.ranked);
  if (circle === undefined) lastTimes.set(option, { from, tasks, layout, ranked: planned.ranked });
  return { tasks, planned, circle };
}

function arranged(work: PlannedWork, turned: readonly PlannedWork[], estimate: Pick<Estimate, 'header'>, time: ShopTime): Omit<Arranged, 'from'> & Pick<Scheduled, 'circle'> {
  const tasks = tasksOf(work, turned, estimate, 'after');
  const layout = layOutTasks(tasks, time);
  if (layout.kind === 'laid-out') return { tasks, layout, circle: undefined };
  const circle = layout.kind === 'circle' ? layout.ids.map((id) => (tasks.find((task) => task.id === id) as Task).title) : undefined;
  const plain = tasksOf(work, turned, estimate, 'no after');
  const again = layOutTasks(plain, time);
  if (again.kind === 'laid-out') return { tasks: plain, layout: again, circle };
  // Lengths that no calendar holds: nothing can be said of days.
  return { tasks: [], layout: layOut([], 1) as Layout, circle };
}
