import { withNeeded, bring, type Estimate, type Labour } from '../estimate/index.js';
import { difference, type Figure } from './figure.js';
import type { Money } from './money.js';
import { planWork, type Work } from './plan.js';

/** What a job that is not part of the repair costs while all is open, and what it would cost alone later. */
export interface WhileOpen {
  readonly job: Labour;
  /** What it adds to the option now, with its goods, fees and tax. */
  readonly now: Figure;
  readonly nowHours: Figure;
  /** What it would come to on its own, with its own way in. */
  readonly alone: Figure;
  readonly aloneHours: Figure;
  readonly saved: Figure;
}

/** Thirds of an hour are cut after some sixty digits: the same hours, added up in another order, differ by less than this. */
const HAIR = '1e-40';

/**
 * Prices the jobs to consider against one option. Jobs that the option does anyway are left out, and so are those
 * that it can't reach or brings no nearer: they would take as many hours as on their own.
 */
export function whileOpen(work: Work, planned: { readonly total: Figure; readonly hours: Figure }, estimate: Estimate, money: Money): WhileOpen[] {
  return estimate.consider.filter((job) => job.modes.length > 0 && !work.labour.includes(job)).flatMap((job) => {
    const added = planWork(withJob(work, job), estimate.shop, money);
    const alone = planWork(withJob({ ...work, title: job.title, labour: [], parts: [], sublets: [], fees: [], way: undefined, staged: undefined }, job), estimate.shop, money).chosen.totals;
    const now = difference(`${job.title}, now`, 'money', [added.chosen.totals.total, planned.total]);
    const nowHours = difference(`${job.title}, hours now`, 'hours', [added.chosen.totals.hours, planned.hours]);
    if (added.unreachable.length > 0 || nowHours.likely.plus(HAIR).gte(alone.hours.likely)) return [];
    return [{ job, now, nowHours, alone: alone.total, aloneHours: alone.hours, saved: difference(`${job.title}: saved by doing it now`, 'money', [alone.total, now]) }];
  });
}

function withJob(work: Work, job: Labour): Work {
  const labour = withNeeded([...work.labour, job]);
  const brought = bring(labour);
  return { ...work, labour, parts: [...new Set([...work.parts, ...brought.parts])], sublets: [...new Set([...work.sublets, ...brought.sublets])] };
}
