import type { Estimate, Shop } from '../estimate/index.js';
import { numberOf } from '../vocabulary/index.js';
import type { Day } from './calendar.js';
import type { Points } from './figure.js';
import { workdayOf } from './price-labour.js';
import { layOut, type Layout, type PlanProblem, type PlanTask } from './schedule/index.js';
import type { Task } from './task.js';
import { calendarWaitEndsOn, workingDaysFrom } from './working-days.js';

/** The shop's time, as far as a timetable needs it. */
export interface ShopTime {
  readonly hoursPerDay: number;
  readonly technicians: number;
  /** The day the work can start; undefined where the estimate has no date. */
  readonly start: Day | undefined;
  readonly shop: Shop;
}

/** Hours of a day where the shop says none, or nonsense. */
const USUAL_DAY = 8;

export function shopTimeOf({ shop, header }: Pick<Estimate, 'shop' | 'header'>, start: Day | undefined): ShopTime {
  const hours = workdayOf(shop).likely.toNumber();
  return { hoursPerDay: hours > 0 ? hours : USUAL_DAY, technicians: header?.technicians ?? shop.technicians, start, shop };
}

/** A length as the scheduler takes it: hours of working time; weeks and months stay what they are, see `endsAt`. */
export function durationOf({ length, wait }: Pick<Task, 'length' | 'wait'>, point: keyof Points, { hoursPerDay }: ShopTime): number {
  return inScheduleUnits(numberOf(length[point]), wait, hoursPerDay);
}

/** Weeks and months where no date is known: as many working days as they hold on average. */
const WEEKS_PER_MONTH = 52 / 12;

export function inScheduleUnits(value: number, wait: Task['wait'], hoursPerDay: number): number {
  return wait === 'd' ? value * hoursPerDay : value;
}

/** The tasks of the calendar as those of the scheduler, with durations at one of their three points. */
export function planTasks(tasks: readonly Task[], point: keyof Points, time: ShopTime): PlanTask[] {
  return tasks.map((task) => {
    const { id, after, wait, counts } = task;
    const duration = durationOf(task, point, time);
    const endsAt = wait === 'wk' || wait === 'mo' ? endOf(wait, time) : undefined;
    return { id, after, kind: wait === undefined ? 'work' : 'wait', duration, counts, endsAt };
  });
}

/** When a wait by the calendar ends, in hours of working time: weeks and months count closed days too. */
function endOf(wait: 'wk' | 'mo', { start: first, hoursPerDay, shop }: ShopTime): (start: number, value: number) => number {
  if (first === undefined) {
    const perWeek = 7 - shop.closedWeekdays.size;
    const days = wait === 'wk' ? perWeek : perWeek * WEEKS_PER_MONTH;
    return (start, value) => start + Math.ceil(value * days) * hoursPerDay;
  }
  const days = workingDaysFrom(first, shop);
  return (start, value) => days.before(calendarWaitEndsOn(days.day(start / hoursPerDay + NOISE), value, wait)) * hoursPerDay;
}

/** Sums of hours that should be whole days may fall short of them by the noise of binary numbers. */
const NOISE = 1e-9;

/** The tasks with their likely lengths, laid out to be planned. */
export function layOutTasks(tasks: readonly Task[], time: ShopTime): Layout | PlanProblem {
  return layOut(planTasks(tasks, 'likely', time), time.technicians);
}

/** Whole working days that hours fill, the first counted. */
export function daysFilled(hours: number, { hoursPerDay }: ShopTime): number {
  return Math.ceil(hours / hoursPerDay - NOISE);
}

/** The number of the working day on which a moment lies, from 0. */
export function dayNumber(hours: number, { hoursPerDay }: ShopTime): number {
  return Math.floor(hours / hoursPerDay + NOISE);
}
