import { problem, sameItems, type Problem } from '../language/index.js';
import { stagedBy } from './build-stage.js';
import * as rules from './decision-rules.js';
import type { Option, Stage } from './option-types.js';
import type { Vehicle } from './types.js';

/** The name of the option that nobody writes: selling the vehicle as it stands. */
export const AS_IT_STANDS = 'as-it-stands';

const kept = new WeakMap<Vehicle, { readonly madeFrom: readonly unknown[]; readonly option: Option }>();

/**
 * Selling the vehicle unrepaired, as an option beside the written ones, where it is known what these leave. What every written option charges before the
 * customer decides, and every fee they all charge, is owed whatever is decided, so it is in here too.
 * So is what stages do and open; nothing of that is put back.
 */
export function asItStands(vehicle: Vehicle | undefined, options: readonly Option[], stages: readonly Stage[], problems: Problem[]): readonly Option[] {
  if (vehicle?.unrepaired === undefined || options.length === 0) return [];
  const twin = options.find((option) => option.name === AS_IT_STANDS);
  if (twin !== undefined) {
    problems.push(problem(rules.nameInUse, twin.record.name?.at ?? twin.at, { name: AS_IT_STANDS }));
    return [];
  }
  if (vehicle.worth === undefined && options.some(({ worth }) => worth === undefined)) {
    // A worth that could not be read has its own message.
    const isLost = vehicle.broken || options.some(({ worth, broken }) => worth === undefined && broken);
    if (!isLost) problems.push(problem(rules.unrepairedAlone, vehicle.unrepaired.at, undefined));
    return [];
  }
  const [first, ...others] = options as readonly [Option, ...Option[]];
  const staged = stagedBy(stages, 'left open');
  const labour = first.labour.filter((job) => staged?.labour.includes(job) === true || (job.done === 'first' && others.every((option) => option.labour.includes(job))));
  const fees = first.fees.filter((fee) => others.every((option) => option.fees.includes(fee)));
  const madeFrom = [...stages, ...labour, ...fees];
  const before = kept.get(vehicle);
  if (before !== undefined && sameItems(before.madeFrom, madeFrom)) return [before.option];
  const option: Option = {
    record: vehicle.record, at: vehicle.unrepaired.at, broken: false,
    name: AS_IT_STANDS, title: 'Sell it as it stands', written: false,
    labour, fees, staged,
    parts: [...new Set(labour.flatMap((job) => job.parts))],
    sublets: [...new Set(labour.flatMap((job) => job.sublets))],
    harvests: [], chances: [], way: undefined, wayAt: undefined,
    worth: vehicle.unrepaired, warranty: undefined, lasts: undefined, resale: undefined, because: [], ruledOutBy: [], leavesOut: [], notes: [], cautions: [],
  };
  kept.set(vehicle, { madeFrom, option });
  return [option];
}
