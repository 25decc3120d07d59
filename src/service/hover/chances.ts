import { childrenOf, kinds, type Record } from '../../vocabulary/index.js';
import type { Weighed } from '../../weigh/index.js';

const kept = new WeakMap<Weighed['planned'], ReadonlySet<Record>>();

/** The chances of an option: its own, and those of the work that it does and of the ways in that it pays for. */
export function chancesIn({ option, planned }: Weighed): ReadonlySet<Record> {
  let found = kept.get(planned);
  if (found === undefined) {
    const all = new Set<Record>();
    const visit = (record: Record) => {
      for (const chance of childrenOf(record, kinds.chance)) {
        all.add(chance);
        visit(chance);
      }
    };
    visit(option.record);
    for (const { job } of planned.chosen.jobs) visit(job.record);
    for (const way of planned.chosen.paid) visit(way.record);
    found = all;
    kept.set(planned, found);
  }
  return found;
}
