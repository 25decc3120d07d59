import { hoursText, moneyText } from '../../report/index.js';
import { zero, type Record } from '../../vocabulary/index.js';
import { accessWork, type Weighed } from '../../weigh/index.js';
import type { Weighing } from '../types.js';

/** What a way in costs once, and option by option whether it is paid and which jobs share it. */
export function sharedBy(record: Record, { resolved, comparison }: Weighing): string[] {
  const way = resolved.estimate.access.find((one) => one.record === record);
  if (way === undefined) return [];
  const lines = accessWork(way, comparison.money);
  const cost = lines.reduce((sum, { amount }) => sum.plus(amount.likely), zero);
  const hours = lines.reduce((sum, line) => sum.plus(line.hours?.likely ?? zero), zero);
  const goods = way.parts.length + way.sublets.length > 0 ? ', parts and outside work apart' : '';
  const by = new Map<string, string[]>();
  for (const weighed of comparison.options) {
    const says = shareIn(weighed, record);
    if (says === undefined) continue;
    by.set(says, [...(by.get(says) ?? []), weighed.option.name]);
  }
  const shares = [...by].map(([says, options]) => `In ${options.join(', ')}: ${says}.`);
  return [`Getting in and closing up: ${moneyText(cost, comparison.money)} for ${hoursText(hours)} h${goods}.`, ...(shares.length > 0 ? shares : ['No option pays for it.'])];
}

function shareIn({ planned: { chosen } }: Weighed, record: Record): string | undefined {
  const paid = chosen.paid.find((one) => one.record === record);
  const giver = paid ?? chosen.paid.find((one) => one.includes.some((other) => other.record === record));
  if (giver === undefined) return undefined;
  // A job takes the way itself, or one that the way gives along.
  const gives = paid === undefined ? [record] : [record, ...paid.includes.map((one) => one.record)];
  const jobs = chosen.jobs.filter(({ mode }) => mode.with.some((one) => gives.includes(one.record))).map(({ job }) => job.name ?? job.title);
  const how = paid === undefined ? `given by ${giver.name} without paying for it` : 'paid once';
  const named = jobs.length > MOST_NAMED ? `${jobs.slice(0, MOST_NAMED).join(', ')} and ${jobs.length - MOST_NAMED} more` : jobs.join(', ');
  return jobs.length === 0 ? `${how}, taken by no job` : `${how}, ${jobs.length === 1 ? 'for' : `shared by ${jobs.length} jobs:`} ${named}`;
}

const MOST_NAMED = 8;
