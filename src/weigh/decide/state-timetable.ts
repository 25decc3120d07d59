import { dayOf } from '../calendar.js';
import type { Scheduled } from '../scheduled.js';
import { compileOrder } from '../schedule/index.js';
import type { Tape } from '../tape.js';
import { daysFilled, inScheduleUnits, planTasks, type ShopTime } from '../timetable.js';
import { workingDaysFrom } from '../working-days.js';

/** Whole working days until a planned option is ready, at the present values of a tape; the order of the plan is kept. */
export function timetableOn(tape: Tape, { tasks, planned }: Scheduled, time: ShopTime): () => number {
  const run = compileOrder(planTasks(tasks, 'likely', time), planned.order, time.technicians);
  const durations = new Float64Array(tasks.length);
  const lengths = Int32Array.from(tasks, ({ length }) => tape.node(length));
  const waits = tasks.map(({ wait }) => wait);
  return () => {
    for (let k = 0; k < lengths.length; k++) durations[k] = inScheduleUnits(tape.valueOf(lengths[k] as number), waits[k], time.hoursPerDay);
    return daysFilled(run(durations), time);
  };
}

/**
 * Working days that no case takes longer than: all tasks at their longest, one after the other. Each task of such a plan
 * starts at the start or where another one ends, so its finish is a sum of some of them. Infinite where a wait goes by the
 * calendar, which counts closed days too.
 */
export function latestDays({ tasks }: Pick<Scheduled, 'tasks'>, time: ShopTime): number {
  let hours = 0;
  for (const { duration, endsAt } of planTasks(tasks, 'high', time)) hours += endsAt === undefined ? duration : Infinity;
  return daysFilled(hours, time);
}

/** Number of the last working day on or before a deadline. */
export function lastDayOf(deadline: string, { start, shop }: ShopTime): number {
  return start === undefined ? Infinity : workingDaysFrom(start, shop).before(dayOf(deadline) + 1);
}
