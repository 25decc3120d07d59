import type { Estimate } from '../../estimate/index.js';
import { betaPert, createDraws } from '../chance/index.js';
import { countBits } from '../bits.js';
import { keeper } from '../keep.js';
import type { Money } from '../money.js';
import type { PlannedWork } from '../planned-work.js';
import { startOf } from '../ready.js';
import { createTape } from '../tape.js';
import { shopTimeOf } from '../timetable.js';
import { CASES, SEED } from './cases.js';
import type { ModelChance, OptionModel } from './model.js';
import { lastDayOf, latestDays, timetableOn } from './state-timetable.js';
import { keysOf } from './written.js';

/** For each core of an option that has a last day, how likely it is back in time where certain chances happen, as bits. */
export type InTime = (happened: number) => readonly number[];

/** The most chances that move the day whose sets are all planned: 256 plans of an option. */
export const MOST_MOVING = 8;

/**
 * Of the drawn cases a set takes each, each 4th, 16th or 64th, by how many of its chances happen: the more, the rarer it is as a
 * rule. Percentages have no say in it, or a flip point of one would not be what the text with it gives.
 */
const EVERY = [1, 4, 16, 64] as const;

function everyOf(set: number): number {
  return EVERY[Math.min(countBits(set), EVERY.length - 1)] as number;
}

const keep = keeper<OptionModel['cores'], InTime>();

/**
 * Whether a core is back in time follows from the plan where just these chances happen: for certain, or where lengths
 * have three figures in so many of drawn cases. Worked out when first asked for. Beyond MOST_MOVING chances that
 * move the day, cores are as the quote has them.
 */
export function inTimeOf(model: OptionModel, estimate: Estimate, money: Money): InTime {
  return keep(model.cores, [estimate, money], () => planned(model, estimate, money));
}

/** The chances that the day may hang on, as bits. */
function movingOf(chances: readonly ModelChance[]): number {
  return chances.reduce((bits, { work }, bit) => (work !== undefined && movesTheDay(work) ? bits | (1 << bit) : bits), 0);
}

/** Whether an option has a core with a last day and more chances that move its day than are planned together. */
export function tooManyMove({ cores, chances }: OptionModel): boolean {
  return cores.length > 0 && countBits(movingOf(chances)) > MOST_MOVING;
}

/** Ways in are opened for jobs alone. */
function movesTheDay({ jobs, parts, sublets }: PlannedWork): boolean {
  return jobs.length > 0 || parts.some(({ arrives }) => arrives !== undefined) || sublets.some(({ backIn, after }) => backIn !== undefined || after.length > 0);
}

function planned(model: OptionModel, estimate: Estimate, money: Money): InTime {
  const quoted = model.cores.map(({ inTime }) => inTime.likely.toNumber());
  const moving = movingOf(model.chances);
  if (model.cores.length === 0 || countBits(moving) > MOST_MOVING) return () => quoted;
  const time = shopTimeOf(estimate, startOf(estimate));
  const lastDays = model.cores.map(({ deadline }) => lastDayOf(deadline, time));
  const draws = createDraws({ cases: CASES, seed: SEED });

  const sharesOf = (happened: number): readonly number[] => {
    const plan = model.planIn(happened);
    const latest = latestDays(plan, time);
    if (lastDays.every((last) => latest <= last)) return lastDays.map(() => 1);
    const tape = createTape(money, estimate.shop.rounding);
    const days = timetableOn(tape, plan, time);
    const ranged = tape.leaves.filter(({ low, high }) => low !== high);
    if (ranged.length === 0) return lastDays.map((last) => (days() <= last ? 1 : 0));
    const keys = keysOf(tape.leaves);
    const columns = ranged.map((leaf) => draws.amounts(keys.get(leaf) as string, betaPert(leaf)));
    const inTime = new Float64Array(lastDays.length);
    const every = everyOf(happened);
    let cases = 0;
    for (let i = happened % every; i < CASES; i += every) {
      cases++;
      ranged.forEach((leaf, k) => tape.set(leaf, (columns[k] as Float64Array)[i] as number));
      tape.run();
      const ready = days();
      lastDays.forEach((last, k) => (inTime[k] = (inTime[k] as number) + (ready <= last ? 1 : 0)));
    }
    return Array.from(inTime, (count) => count / cases);
  };

  const known = new Map<number, readonly number[]>();
  return (happened) => {
    const set = happened & moving;
    const before = known.get(set);
    if (before !== undefined) return before;
    const found = sharesOf(set);
    known.set(set, found);
    return found;
  };
}
