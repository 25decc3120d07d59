import type { Inspection } from '../../estimate/index.js';
import { competes, type Comparison, type Weighed } from '../weigh.js';
import { keeper } from '../keep.js';
import type { Figure } from '../figure.js';
import { coveragesOf, type Covered } from './coverage.js';
import { expectedOf, type Expected } from './expected.js';
import { chanceFlipsOf, flipsOf, nearestFirst, type Beyond, type Flip } from './flips.js';
import { tooManyMove } from './in-time.js';
import { inspectFirst, isUnread, type InspectionWeighed } from './inspect-first.js';
import { marginOf, type Margin } from './margin.js';
import { modelOf, type OptionModel } from './model.js';
import { downtimeOf, monthlyOf, type Monthly } from './monthly.js';
import type { OptionRisk } from './option-run.js';
import { riskOf } from './risk.js';

/** What is known of an option beyond its quote. */
export interface Decided {
  readonly weighed: Weighed;
  /** Undefined where nothing about any option varies. */
  readonly risk: OptionRisk | undefined;
  /** Cost in all on average over every state of its chances, amounts at their three-point means. */
  readonly average: number;
  readonly monthly: Monthly | undefined;
  readonly downtime: Figure | undefined;
  /** For the shop's eyes only. */
  readonly margin: Margin;
}

/** Everything that helps to decide, beside the comparison it was made from. */
export interface Decision {
  readonly comparison: Comparison;
  /** In the order of the comparison. */
  readonly options: readonly Decided[];
  /** How many cases were drawn; undefined where nothing varies. */
  readonly cases: number | undefined;
  /** Nearest first, then as the table has them. */
  readonly flips: readonly Flip[];
  /** Limits of the search for flips, and of the averages, that were reached. */
  readonly beyond: readonly Beyond[];
  readonly inspections: readonly InspectionWeighed[];
  /** Not weighed, since a line of theirs could not be read. */
  readonly unread: readonly Inspection[];
  readonly coverages: readonly Covered[];
}

const keep = keeper<Comparison, Decision>();

/** Works out what a comparison alone does not say. Costs some ten times as much as weighing, so it is asked for when it is shown. */
export function decide(comparison: Comparison): Decision {
  return keep(comparison, [], () => decided(comparison));
}

function decided(comparison: Comparison): Decision {
  const { estimate, money, options, ranking } = comparison;
  const models = options.map((weighed) => modelOf(weighed, estimate, money));
  const competing = models.filter(({ weighed }) => competes(weighed));
  const varies = models.some(({ chances, inAll, weighed }) => chances.length > 0 || inAll.ranged || weighed.ready.tasks.some(({ task }) => task.length.ranged));
  const risk = varies ? riskOf(models, new Set(competing), estimate, money) : undefined;
  const expected = new Map<OptionModel, Expected>(models.map((model) => [model, expectedOf(model, estimate, money)]));
  const searched = flipsOf(ranking, estimate, money);
  const flips = [...searched.flips, ...chanceFlipsOf(competing, expected, estimate, money)];
  return {
    comparison,
    cases: risk?.cases,
    options: models.map((model, i) => ({
      weighed: model.weighed,
      risk: risk?.options[i],
      average: (expected.get(model) as Expected)(new Map()),
      monthly: monthlyOf(model.weighed, estimate, money),
      downtime: downtimeOf(model.weighed, estimate, money),
      margin: marginOf(model.weighed, estimate, money),
    })),
    flips: nearestFirst(flips),
    beyond: [...searched.beyond, ...(models.some(tooManyMove) ? ['sets' as const] : [])],
    inspections: estimate.inspections.flatMap((inspection) => inspectFirst(inspection, competing, expected, estimate, money) ?? []),
    unread: estimate.inspections.filter(isUnread),
    coverages: coveragesOf(estimate),
  };
}
