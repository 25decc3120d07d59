import type { Chance, Estimate, Source } from '../estimate/index.js';
import { waysBeyond, type OptionPlanned } from './brought.js';
import { MOST_CHANCES } from './chance/index.js';
import type { Money } from './money.js';

/** A chance of an option, and the places of those of which one must happen before it can; none where it hangs on nothing. */
export interface ChanceIn {
  readonly chance: Chance;
  readonly under: readonly number[];
  /** What comes back once, comes back with all that may then turn up. */
  readonly when: Chance['when'];
}

/** The chances that count for an option, and how many there are beyond the limit. */
export interface ChancesOf {
  readonly counted: readonly ChanceIn[];
  readonly all: number;
}

/**
 * The chances of an option as it is planned: its own, those of the jobs it does and of the ways in that it pays for, and
 * those of the jobs and ways in that a chance brings. What belongs to work that is done anyway hangs on nothing, in whatever
 * order things stand; what several chances bring hangs on any of these. Up to MOST_CHANCES count; a chance without a
 * percentage has its message.
 */
export function chancesOf(weighed: OptionPlanned, estimate: Estimate, money: Money): ChancesOf {
  const { option, planned: { chosen } } = weighed;
  const of = ({ record }: Source) => estimate.chances.get(record) ?? [];
  const counted: { readonly chance: Chance; readonly under: number[]; readonly when: Chance['when'] }[] = [];
  const seen = new Map<Chance, number>();
  const doneAnyway = estimate.chances.size === 0 ? [] : [...chosen.jobs.map(({ job }) => job), ...chosen.paid].flatMap(of);
  const anyway = new Set(doneAnyway);
  let all = 0;
  const visit = (chance: Chance, above: number | undefined) => {
    if (chance.percent === undefined || (above !== undefined && anyway.has(chance))) return;
    const known = seen.get(chance);
    if (known !== undefined) {
      if (above !== undefined && above !== known) counted[known]?.under.push(above);
      return;
    }
    seen.set(chance, counted.length);
    all++;
    if (counted.length >= MOST_CHANCES) return;
    const when = above === undefined ? chance.when : counted[above]?.when === 'comeback' ? 'comeback' : chance.when;
    const at = counted.push({ chance, under: above === undefined ? [] : [above], when }) - 1;
    for (const below of chance.chances) visit(below, at);
    // A comeback takes its jobs as they are: what may turn up on them then is beyond what anyone plans.
    if (when === 'comeback' || estimate.chances.size === 0) return;
    for (const below of new Set([...chance.labour, ...waysBeyond(chance, weighed, estimate, money)].flatMap(of))) visit(below, at);
  };
  for (const chance of [...option.chances, ...doneAnyway]) visit(chance, undefined);
  return { counted, all };
}
