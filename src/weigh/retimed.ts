import { changedSince, sameItems } from '../language/index.js';
import type { Amount } from '../vocabulary/index.js';
import type { PlannedJob } from './plan.js';
import type { PlannedWork } from './planned-work.js';
import { withDurations, type Layout } from './schedule/index.js';
import type { Task } from './task.js';
import { lengthOf } from './tasks.js';
import { durationOf, type ShopTime } from './timetable.js';

/** All that the tasks of an option and their lengths are made from. */
interface ArrangedFrom {
  readonly work: PlannedWork;
  readonly answer: Amount | undefined;
  readonly time: ShopTime;
}

/** The tasks of an option, laid out to be planned. */
export interface Arranged {
  readonly from: ArrangedFrom;
  readonly tasks: readonly Task[];
  readonly layout: Layout;
}

/**
 * The tasks of an option again, where only the hours and titles of a few jobs differ from before: what waits for what is
 * then the same, and is not worked out anew. Undefined where anything else may differ.
 */
export function retimed({ from, tasks, layout }: Arranged, { work, answer, time }: ArrangedFrom): Pick<Arranged, 'tasks' | 'layout'> & { readonly circle: undefined } | undefined {
  const { jobs } = from.work;
  const changed = changedSince(jobs, work.jobs);
  if (changed === undefined || from.answer !== answer || !sameTime(from.time, time) || !sameAround(from.work, work)) return undefined;
  const now = [...tasks];
  const durations: { readonly place: number; readonly duration: number }[] = [];
  for (const i of changed) {
    const [old, job] = [jobs[i] as PlannedJob, work.jobs[i] as PlannedJob];
    if (!waitsAlike(old, job)) return undefined;
    const place = tasks.findIndex(({ at }) => at === old.line.at);
    const task = tasks[place];
    if (task === undefined) return undefined;
    const { title, at } = job.line;
    const again: Task = { ...task, id: `${place + 1} ${title}`, title, length: lengthOf(job), at };
    now[place] = again;
    durations.push({ place, duration: durationOf(again, 'likely', time) });
  }
  const other = withDurations(layout, durations);
  return other === undefined ? undefined : { tasks: now, layout: other, circle: undefined };
}

/** What a job's task waits for, and what waits for it. A job that comes apart is two tasks, and is arranged anew. */
function waitsAlike({ job: a, mode: { with: withA } }: PlannedJob, { job: b, mode: { with: withB } }: PlannedJob): boolean {
  return a.apart === undefined && b.apart === undefined && a.name === b.name && a.done === b.done && sameItems(withA, withB)
    && sameItems(a.parts, b.parts) && sameItems(a.sublets, b.sublets) && sameItems(a.tools, b.tools) && sameItems(namesIn(a.after), namesIn(b.after));
}

function namesIn(after: PlannedJob['job']['after']): readonly string[] {
  return after.map(({ name }) => name);
}

/** The hours of a day are the shop's. */
function sameTime(a: ShopTime, b: ShopTime): boolean {
  return a.shop === b.shop && a.start === b.start && a.technicians === b.technicians;
}

/** What a stage does is made anew with each job of it. */
function sameAround(a: PlannedWork, b: PlannedWork): boolean {
  return a.staged === b.staged && sameItems(a.ways, b.ways) && sameItems(a.parts, b.parts) && sameItems(a.sublets, b.sublets);
}
