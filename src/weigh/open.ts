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

/**
 * Prices the jobs to consider against one option. Jobs that the option does anyway are left out, and so are those
 * that it brings no nearer: they would take as many hours as on their own.
 */
export function whileOpen(work: Work, planned: { readonly total: Figure; readonly hours: Figure }, estimate: Estimate, money: Money): WhileOpen[] {
  return estimate.consider.filter((job) => job.modes.length > 0 && !work.labour.includes(job)).map((job) => {
    const added = planWork(withJob(work, job), estimate.shop, money).chosen.totals;
    const alone = planWork(withJob({ ...work, title: job.title, labour: [], parts: [], sublets: [], fees: [], way: undefined }, job), estimate.shop, money).chosen.totals;
    const now = difference(`${job.title}, now`, 'money', [added.total, planned.total]);
    return {
      job,
      now,
      nowHours: difference(`${job.title}, hours now`, 'hours', [added.hours, planned.hours]),
      alone: alone.total,
      aloneHours: alone.hours,
      saved: difference(`${job.title}: saved by doing it now`, 'money', [alone.total, now]),
    };
  }).filter((one) => one.nowHours.likely.lt(one.aloneHours.likely));
}

function withJob(work: Work, job: Labour): Work {
  const labour = withNeeded([...work.labour, job]);
  const brought = bring(labour);
  return { ...work, labour, parts: [...new Set([...work.parts, ...brought.parts])], sublets: [...new Set([...work.sublets, ...brought.sublets])] };
}
