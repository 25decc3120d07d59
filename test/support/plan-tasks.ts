import { bayPlan, layOut, type BayPlan, type PlanEffort, type PlanProblem, type PlanTask } from '../../src/weigh/schedule/index.js';

/** Tasks laid out and planned. */
export function planTasks(tasks: readonly PlanTask[], technicians: number, effort: PlanEffort = 'search'): BayPlan | PlanProblem {
  const layout = layOut(tasks, technicians);
  return layout.kind === 'laid-out' ? bayPlan(layout, effort) : layout;
}
