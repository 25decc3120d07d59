import type { Block } from '../language/index.js';
import type { Estimate, Stage } from '../estimate/index.js';
import { difference, type Figure } from './figure.js';
import { keeper } from './keep.js';
import type { Line } from './line.js';
import type { Money } from './money.js';
import { planWork, type Plan, type Work } from './plan.js';
import { fixedLines } from './plan-goods.js';
import { hoursLine } from './price-labour.js';
import { stageRestsOn } from './rests-on.js';
import { fixedOf, total, type Totals } from './totals.js';

/** A stage by itself: what it comes to, and what it then comes to where the customer stops there. */
export interface StageWeighed {
  readonly stage: Stage;
  /** Its work with what it opens, and these left open. */
  readonly plan: Plan;
  /** The stage alone: what is owed where it is left as it is. */
  readonly totals: Totals;
  /** The lines that putting back adds, without its fees and taxes. */
  readonly backLines: readonly Line[];
  /** What putting back adds, fees and taxes with it. */
  readonly putBack: Figure;
  /** The stage and putting back together: what is owed where the customer stops there and wants it whole. */
  readonly stop: Figure;
  /** Hours of putting back, closing the ways in among them. */
  readonly backHours: Figure;
  /** False where a line that it rests on could not be read or priced. */
  readonly complete: boolean;
}

type Kept = Omit<StageWeighed, 'complete'> & { readonly reached: boolean };

const keepStage = keeper<Stage, Kept>();

/** Weighs every stage of an estimate. `flawed` holds the blocks that have errors. */
export function weighStages(estimate: Estimate, money: Money, flawed: ReadonlySet<Block>): readonly StageWeighed[] {
  const { shop, access, stages } = estimate;
  return stages.map((stage) => {
    const { reached, ...weighed } = keepStage(stage, [shop, money, ...access], () => weighStage(stage, estimate, money));
    return { ...weighed, complete: reached && (flawed.size === 0 || [...stageRestsOn(stage, estimate)].every((block) => !flawed.has(block))) };
  });
}

/**
 * A stage is its jobs, done with what it opens, and getting in there. Putting back is closing these ways in, with their
 * parts and outside work, the hours of `put back`, and new parts for those that are destroyed. Both are added up in one,
 * so that fees, caps and taxes are those of all that is owed; what that is above the stage alone is the price of putting back.
 */
function weighStage(stage: Stage, { shop, access }: Estimate, money: Money): Kept {
  const { title, labour, parts, sublets, opens, putBack, rate, destroys } = stage;
  const apart: Work = { title, labour, parts, sublets, fees: [], way: opens, staged: { labour, ways: opens, then: 'left open' }, access };
  const whole: Work = { ...apart, title: `${title}, and put back`, parts: [...new Set([...parts, ...destroys])], staged: { labour, ways: opens, then: 'closed' } };
  const { chosen: plan, unreachable } = planWork(apart, shop, money);
  const { chosen: closed } = planWork(whole, shop, money);
  const back = putBack === undefined ? [] : [hoursLine(`${title}: put back`, putBack, rate, stage, money)];
  const all = total(whole.title, [...closed.jobs.map(({ line }) => line), ...back], closed.opened, fixedOf(fixedLines(whole, shop, money)), [], shop, money);
  const { totals } = plan;
  return {
    stage, plan, totals,
    backLines: all.lines.filter((line) => line.kind !== 'fee' && !isIn(line, totals.lines)),
    putBack: difference(`${title}: putting it back`, 'money', [all.total, totals.total]),
    stop: all.total,
    backHours: difference(`${title}: hours of putting it back`, 'hours', [all.hours, totals.hours]),
    reached: unreachable.length === 0,
  };
}

function isIn(line: Line, lines: readonly Line[]): boolean {
  return lines.some((one) => one.at === line.at);
}
