export { bayPlan, type BayPlan, type PlanEffort } from './bay-plan.js';
export { MOST_PATHS } from './critical-paths.js';
export { LONGEST } from './duration.js';
export { estimateFinish, finishWithChance, type FinishEstimate } from './finish.js';
export { criticalPath, type Activity, type ActivityTimes, type NetworkPlan } from './network.js';
export type { PlanProblem, PlanTask } from './plan-task.js';
export { compileOrder } from './replan.js';
export { MOST_WORK } from './search.js';
export { pertMean, pertVariance } from './three-point.js';
