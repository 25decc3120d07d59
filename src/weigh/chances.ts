import type { Chance, Estimate, Option, Source } from '../estimate/index.js';
import { MOST_CHANCES } from './chance/index.js';
import type { Plan } from './plan.js';

/** A chance of an option, and the place of the one without which it can't happen. */
export interface ChanceIn {
  readonly chance: Chance;
  readonly parent: number | undefined;
  /** What comes back once, comes back with all that may then turn up. */
  readonly when: Chance['when'];
}

/** The chances that count for an option, and how many there are beyond the limit. */
export interface ChancesOf {
  readonly counted: readonly ChanceIn[];
  readonly all: number;
}

/**
 * The chances of an option as it is planned: its own, those of the jobs it does and of the ways in that it pays for,
 * each before the ones below it. What belongs to work that is done anyway hangs on no chance that would bring that work
 * too, in whatever order they stand. Up to MOST_CHANCES count; a chance without a percentage has its message.
 */
export function chancesOf(option: Option, plan: Plan, estimate: Pick<Estimate, 'chances'>): ChancesOf {
  const counted: ChanceIn[] = [];
  const seen = new Set<Chance>();
  const doneAnyway = estimate.chances.size === 0 ? [] : [...plan.jobs.map(({ job }) => job), ...plan.paid].flatMap(({ record }) => estimate.chances.get(record) ?? []);
  const anyway = new Set(doneAnyway);
  let all = 0;
  const visit = (chance: Chance, parent: number | undefined) => {
    if (chance.percent === undefined || seen.has(chance) || (parent !== undefined && anyway.has(chance))) return;
    seen.add(chance);
    all++;
    if (counted.length >= MOST_CHANCES) return;
    const when = parent === undefined ? chance.when : (counted[parent] as ChanceIn).when === 'comeback' ? 'comeback' : chance.when;
    const at = counted.push({ chance, parent, when }) - 1;
    for (const below of chance.chances) visit(below, at);
    // A comeback takes its jobs as they are: what may turn up on them then is beyond what anyone plans.
    if (when === 'open') for (const job of chance.labour) visitAll(job, at);
  };
  const visitAll = ({ record }: Source, parent: number) => {
    for (const chance of estimate.chances.get(record) ?? []) visit(chance, parent);
  };
  for (const chance of [...option.chances, ...doneAnyway]) visit(chance, undefined);
  return { counted, all };
}
