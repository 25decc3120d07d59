import type { Estimate } from '../../estimate/index.js';
import type { PlannedWork } from '../planned-work.js';
import { startOf } from '../ready.js';
import { scheduled, type Scheduled } from '../scheduled.js';
import { shopTimeOf } from '../timetable.js';
import type { Weighed } from '../weigh.js';

/** The plan of an option where certain of its chances happen: bit i is set where chance i does. Each is made once. */
export type PlanIn = (happened: number) => Scheduled;

/** @param turned what each chance takes; undefined where it happens after the vehicle has left. */
export function plansOf({ option, planned: { chosen } }: Weighed, turned: readonly (PlannedWork | undefined)[], estimate: Estimate): PlanIn {
  const work: PlannedWork = { jobs: chosen.jobs, ways: chosen.paid, parts: option.parts, sublets: option.sublets, staged: option.staged };
  const known = new Map<number, Scheduled>();
  return (happened) => {
    let plan = known.get(happened);
    if (plan === undefined) {
      const some = turned.flatMap((one, bit) => (one === undefined || (happened & (1 << bit)) === 0 ? [] : [one]));
      plan = scheduled(work, withoutTwins(some), estimate, shopTimeOf(estimate, startOf(estimate)), some.length === 0 ? 'search' : 'rules');
      known.set(happened, plan);
    }
    return plan;
  };
}

/**
 * Two chances may need the same way in, or the same job: it is opened, or done, once. The quote has its own of this name
 * for priced lines, where parts are paid once too; here only what takes time counts, and a part that two wait for
 * arrives but once anyway.
 */
function withoutTwins(turned: readonly PlannedWork[]): PlannedWork[] {
  const seen = new Set<object>();
  const isNew = (one: object) => !seen.has(one) && seen.add(one) === seen;
  return turned.map((work) => ({ ...work, ways: work.ways.filter(isNew), jobs: work.jobs.filter(({ job }) => isNew(job)) }));
}
