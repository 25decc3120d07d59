import type { Access, Part, Staged, Sublet } from '../estimate/index.js';
import type { PlannedJob } from './plan.js';

/** What an option does, in one of its plans. */
export interface PlannedWork {
  readonly jobs: readonly PlannedJob[];
  readonly ways: readonly Access[];
  readonly parts: readonly Part[];
  readonly sublets: readonly Sublet[];
  /** What of it comes before the decision. */
  readonly staged?: Staged | undefined;
}

/** A way in that a stage opened and nobody closes. */
export function leftOpen(way: Access, { staged }: PlannedWork): boolean {
  return staged?.then === 'left open' && staged.ways.includes(way);
}

/** The parts of the work, and those of the ways in that are closed. */
export function partsOf(work: PlannedWork): readonly Part[] {
  return [...work.parts, ...work.ways.flatMap((way) => (leftOpen(way, work) ? [] : way.parts))];
}

export function subletsOf(work: PlannedWork): readonly Sublet[] {
  return [...work.sublets, ...work.ways.flatMap((way) => (leftOpen(way, work) ? [] : way.sublets))];
}

/** Outside work that comes after what is done last, by its own `after` or by that of what it waits for. */
export function lateOutside(all: readonly PlannedWork[], last: readonly PlannedJob[]): ReadonlySet<Sublet> {
  const late = new Set<Sublet>();
  const names = new Set(last.flatMap(({ job }) => job.name ?? []));
  const sublets = all.flatMap((one) => [...one.sublets, ...one.ways.flatMap((way) => way.sublets)]);
  for (let before = -1; before < late.size; ) {
    before = late.size;
    for (const sublet of sublets) {
      if (!sublet.after.some(({ name }) => names.has(name))) continue;
      late.add(sublet);
      if (sublet.name !== undefined) names.add(sublet.name);
    }
  }
  return late;
}
