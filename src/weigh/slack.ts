import type { Points } from './figure.js';
import { criticalPath, estimateFinish, finishWithChance, type BayPlan, type NetworkPlan } from './schedule/index.js';
import type { Task } from './task.js';
import { durationOf, type ShopTime } from './timetable.js';

/** How sure the finish is asked for. */
const CHANCES = [0.5, 0.8, 0.9];

/** What a bay plan leaves of time, task by task, and when it is finished how surely; neither where the tasks make no network. */
export interface Slack {
  readonly times: NetworkPlan | undefined;
  readonly finishes: readonly { readonly chance: number; readonly hours: number }[];
}

/**
 * The network of the tasks with one link more for each technician's next piece of work, so that its critical path is
 * that of the plan, and slack is what the plan leaves.
 */
export function slackOf(tasks: readonly Task[], planned: BayPlan, time: ShopTime): Slack {
  const lastOf = new Map<number, number>();
  const after = tasks.map((task) => [...task.after]);
  const byStart = tasks.map((_, i) => i).sort((a, b) => startOfTask(a) - startOfTask(b));
  for (const i of byStart) {
    const technician = planned.tasks[i]?.technician;
    if (technician === undefined) continue;
    const before = lastOf.get(technician);
    if (before !== undefined) (after[i] as number[]).push(before);
    lastOf.set(technician, i);
  }
  const counted = tasks.map((task, i) => {
    const taken = (planned.tasks[i] as BayPlan['tasks'][number]).end - startOfTask(i);
    const likely = durationOf(task, 'likely', time);
    // Waits by the calendar: as long as in the plan, and longer or shorter by the same share.
    const scale = likely > 0 ? taken / likely : 1;
    const at = (point: keyof Points) => durationOf(task, point, time) * scale;
    return { id: task.id, after: (after[i] as number[]).map((one) => (tasks[one] as Task).id), duration: task.counts ? { low: at('low'), likely: taken, high: at('high') } : { low: 0, likely: 0, high: 0 } };
  });
  const times = criticalPath(counted, ({ likely }) => likely);
  const byMean = criticalPath(counted);
  if (times.kind !== 'planned' || byMean.kind !== 'planned') return { times: undefined, finishes: [] };
  const estimate = estimateFinish(counted, byMean);
  return { times, finishes: CHANCES.map((chance) => ({ chance, hours: finishWithChance(estimate, chance) })) };

  function startOfTask(i: number): number {
    return (planned.tasks[i] as BayPlan['tasks'][number]).start;
  }
}
