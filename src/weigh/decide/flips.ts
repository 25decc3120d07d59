import type { Block, Span } from '../../language/index.js';
import type { Chance, Estimate, MarkupBand, Option } from '../../estimate/index.js';
import { hundred } from '../../vocabulary/index.js';
import { difference, sum, type Figure, type FigureUnit } from '../figure.js';
import type { Money } from '../money.js';
import { plansToSearch, type Plan } from '../plan.js';
import { partsIn, returnsOf } from '../cores.js';
import { createTape, type Leaf, type MarkupTables, type Tape } from '../tape.js';
import type { Weighed } from '../weigh.js';
import { expectedOf, type Expected } from './expected.js';
import type { OptionModel } from './model.js';
import { lineAt } from './written.js';

/** Where a written figure changes which option is the cheapest, all else held and the ways in planned anew. */
export interface Flip {
  /** The figure as written, and the title of its line. */
  readonly figure: Figure;
  readonly at: Span;
  readonly line: string;
  /** The last value, in steps of the figure's unit, at which the choice is still today's, and the first at which not. */
  readonly holds: number;
  readonly flips: number;
  readonly way: 'above' | 'below';
  /** The option that is the cheapest beyond. */
  readonly to: Option;
  /** How far off, as a share of the figure; undefined where it is 0. */
  readonly share: number | undefined;
  /** `quoted` compares what is quoted; `average` what it costs with chances, since chances are in no quote. */
  readonly measure: 'quoted' | 'average';
}

/** A limit that was reached: there are more figures, or more plans of an option, than are searched, or more sets of chances than are planned. */
export type Beyond = 'figures' | 'plans' | 'sets';

export interface Searched {
  readonly flips: readonly Flip[];
  readonly beyond: readonly Beyond[];
}

/** The most plans of one option that are searched: all mixes of six ways in. */
export const MOST_PLANS = 64;

/** The most figures that are searched; a file with more is no estimate that anyone compares by hand. */
export const MOST_FIGURES = 600;

/** The steps in which a figure is searched, by what it counts: cents, hundredths of an hour or of a percent. */
const STEPS: Readonly<Record<FigureUnit, number>> = { money: 0.01, hours: 0.01, minutes: 1, percent: 0.01, number: 0.01, days: 0.01 };

/** Money in coins where those are greater, but for a price that is itself written finer. */
function stepOf({ figure: { unit }, likely }: Leaf, { currency }: Money): number {
  return unit === 'money' && currency.digits === 0 && Number.isInteger(likely) ? 1 : STEPS[unit];
}

/** How far up a figure is followed, as a multiple of itself, and where it is 0. */
const FARTHEST = 20;
const FROM_NOTHING = 10_000;

/** Fractions of the way to the farthest value at which the choice is looked at before the search closes in. */
const LOOKS = [0.001, 0.002, 0.004, 0.008, 0.015, 0.025, 0.04, 0.06, 0.09, 0.13, 0.19, 0.28, 0.4, 0.55, 0.75, 1];

/** For every written figure the nearest value on either side at which the choice changes, in the order of the table. */
export function flipsOf(ranking: readonly Weighed[], estimate: Estimate, money: Money): Searched {
  if (ranking.length < 2) return { flips: [], beyond: [] };
  const tables = tablesFor(ranking, estimate);
  const tape = createTape(money, estimate.shop.rounding, tables);
  // In the order of the file, since equals go to the first.
  const inFile = estimate.options.flatMap((option) => ranking.filter((one) => one.option === option));
  const costs = inFile.map((weighed) => costOf(weighed, estimate, money));
  const choice = new Choice(costs, tape);
  const today = choice.cheapest();
  const flips: Flip[] = [];
  for (const leaf of tape.leaves.slice(0, MOST_FIGURES)) {
    for (const way of ['above', 'below'] as const) {
      const found = nearest(leaf, stepOf(leaf, money), way, tables.get(leaf.at) ?? [], today, choice, tape);
      if (found === undefined) continue;
      const distance = Math.abs(found.flips - leaf.likely);
      flips.push({
        ...found, way, figure: leaf.figure, at: leaf.at, line: lineAt(leaf.at).title, measure: 'quoted',
        to: (inFile[found.to] as Weighed).option, share: leaf.likely === 0 ? undefined : distance / leaf.likely,
      });
    }
  }
  const beyond: Beyond[] = [...(tape.leaves.length > MOST_FIGURES ? ['figures' as const] : []), ...(costs.some(({ plans }) => plans.length >= MOST_PLANS) ? ['plans' as const] : [])];
  return { flips, beyond };
}

/**
 * The nearest first. At equal distance in the order of the text below one line at the left edge, such as an option; these
 * as the table first comes to them: options as in the file, each added up from its work on.
 */
export function nearestFirst(flips: readonly Flip[]): readonly Flip[] {
  const blocks = new Map<Block, number>();
  for (const { at } of flips) if (!blocks.has(at.block)) blocks.set(at.block, blocks.size);
  // Divided in binary, equal distances of two figures may differ by their last bits.
  const distance = ({ share = Number.MAX_SAFE_INTEGER }: Flip) => Math.round(share * 1e9);
  const place = ({ at }: Flip) => blocks.get(at.block) ?? 0;
  return [...flips].sort((a, b) => distance(a) - distance(b) || place(a) - place(b) || a.at.start - b.at.start);
}

function tablesFor(ranking: readonly Weighed[], { shop, access }: Estimate): MarkupTables {
  const tables = new Map<Span, readonly MarkupBand[]>();
  for (const { parts, sublets } of [...ranking.map(({ option }) => option), ...access]) {
    for (const { cost } of parts) if (cost !== undefined) tables.set(cost.at, shop.markup.parts);
    for (const { cost } of sublets) if (cost !== undefined) tables.set(cost.at, shop.markup.sublets);
  }
  return tables;
}

/** The cost in all of an option in each of its plans, and what the plans are chosen by. */
interface Cost {
  readonly plans: readonly { readonly inAll: Figure; readonly total: Figure; readonly hours: Figure }[];
}

function costOf({ option, ready, givenUp }: Weighed, estimate: Estimate, money: Money): Cost {
  const plans = plansToSearch({ ...option, access: estimate.access }, estimate.shop, money, MOST_PLANS);
  return {
    plans: plans.map((plan: Plan) => {
      const back = returnsOf({ parts: partsIn(option, plan), harvests: option.harvests }, plan.totals.lines, ready, estimate, money);
      const net = difference('What is paid in the end', 'money', [plan.totals.total, back.all]);
      return { inAll: sum('Cost in all', 'money', [net, ...(givenUp === undefined ? [] : [givenUp])]), total: plan.totals.total, hours: plan.totals.hours };
    }),
  };
}

/** Which option is the cheapest at the tape's present values. */
class Choice {
  private readonly options: readonly (readonly { readonly inAll: number; readonly total: number; readonly hours: number }[])[];

  constructor(costs: readonly Cost[], private readonly tape: Tape) {
    this.options = costs.map(({ plans }) => plans.map((plan) => ({ inAll: tape.node(plan.inAll), total: tape.node(plan.total), hours: tape.node(plan.hours) })));
    tape.run();
  }

  cheapest(): number {
    let best = 0;
    let least = Infinity;
    this.options.forEach((plans, i) => {
      const cost = this.costOf(plans);
      if (cost >= least - NOISE) return;
      best = i;
      least = cost;
    });
    return best;
  }

  /** The cost in all in the plan that comes to least, then takes fewest hours: as the quote would be planned. */
  private costOf(plans: Choice['options'][number]): number {
    let cost = Infinity;
    let total = Infinity;
    let hours = Infinity;
    for (const plan of plans) {
      const its = this.tape.valueOf(plan.total);
      if (its > total + NOISE || (its > total - NOISE && this.tape.valueOf(plan.hours) >= hours - NOISE)) continue;
      total = its;
      hours = this.tape.valueOf(plan.hours);
      cost = this.tape.valueOf(plan.inAll);
    }
    return cost;
  }
}

/** Sums of cents in binary numbers differ by less. */
const NOISE = 1e-6;

function nearest(leaf: Leaf, step: number, way: 'above' | 'below', bands: readonly MarkupBand[], today: number, choice: Choice, tape: Tape): { readonly holds: number; readonly flips: number; readonly to: number } | undefined {
  const here = Math.round(leaf.likely / step);
  const far = way === 'below' ? 0 : leaf.likely === 0 ? FROM_NOTHING / step : here * FARTHEST;
  const at = (count: number) => {
    tape.set(leaf, count * step);
    tape.runFrom(leaf);
    return choice.cheapest();
  };
  let holds = here;
  let flips: number | undefined;
  for (const count of looksFor(here, far, step, bands)) {
    if (at(count) !== today) {
      flips = count;
      break;
    }
    holds = count;
  }
  while (flips !== undefined && Math.abs(flips - holds) > 1) {
    const middle: number = Math.round((flips + holds) / 2);
    if (at(middle) === today) holds = middle;
    else flips = middle;
  }
  const to = flips === undefined ? today : at(flips);
  tape.set(leaf, leaf.likely);
  tape.runFrom(leaf);
  if (flips === undefined) return undefined;
  return { holds: rounded(holds, step), flips: rounded(flips, step), to };
}

/** Where the choice is looked at, nearest first: on the way to the farthest, and on both sides of each step of the markup. */
function looksFor(here: number, far: number, step: number, bands: readonly MarkupBand[]): readonly number[] {
  const ends = bands.flatMap(({ upTo }) => (upTo === undefined ? [] : [Math.floor(upTo.likely.toNumber() / step + NOISE)]));
  const [low, high] = far < here ? [far, here] : [here, far];
  const beside = ends.flatMap((end) => [end, end + 1]).filter((count) => count > low && count < high);
  const looks = LOOKS.map((look) => Math.round(here + (far - here) * look));
  return [...new Set([...looks, ...beside])].filter((count) => count !== here).sort((a, b) => Math.abs(a - here) - Math.abs(b - here));
}

/** A count of steps as a decimal figure, without the last bits of a binary product. */
function rounded(count: number, step: number): number {
  return count / Math.round(1 / step);
}

/**
 * For each chance the likelihood at which another option has the least average cost. The average is straight in one
 * likelihood, so two points give it.
 */
export function chanceFlipsOf(models: readonly OptionModel[], expected: ReadonlyMap<OptionModel, Expected>, estimate: Estimate, money: Money): readonly Flip[] {
  if (models.length < 2) return [];
  // What hangs on another in some option has no average there that is straight in its own likelihood alone.
  const seen = new Set<unknown>(models.flatMap(({ chances }) => chances.flatMap(({ chance, under }) => (under.length === 0 ? [] : [chance]))));
  return models.flatMap(({ chances }) => chances.flatMap(({ chance, likelihood }) => {
    if (seen.has(chance) || chance.percent === undefined) return [];
    seen.add(chance);
    const certain = likelihood === 0 || likelihood === 1;
    const lines = models.map((model) => {
      const has = model.chances.some((one) => one.chance === chance);
      const average = certain && has ? expectedOf(asIfOpen(model, chance), estimate, money) : (expected.get(model) as Expected);
      const without = average(new Map([[chance.at, false]]));
      return { without, with: average(new Map([[chance.at, true]])), has };
    });
    const costAt = (p: number) => lines.map((line) => (line.has ? line.without + p * (line.with - line.without) : line.without));
    const figure: Figure = { label: chance.title, unit: 'percent', low: chance.percent.low, likely: chance.percent.likely, high: chance.percent.high, step: { kind: 'given' }, from: [], at: chance.percent.at, ranged: false };
    const today = leastOf(costAt(likelihood));
    return (['above', 'below'] as const).flatMap((way): Flip[] => {
      const found = crossing(costAt, likelihood, way, today);
      if (found === undefined) return [];
      const flips = found.p * 100;
      const distance = Math.abs(flips - (chance.percent?.likely.toNumber() ?? 0));
      return [{
        figure, at: figure.at as Span, line: chance.title, way, measure: 'average', holds: flips, flips,
        to: (models[found.to] as OptionModel).weighed.option, share: likelihood === 0 ? undefined : distance / (likelihood * hundred.toNumber()),
      }];
    });
  }));
}

/** What is written as never or always happening has no average the other way: it is asked as if it might. */
function asIfOpen(model: OptionModel, chance: Chance): OptionModel {
  return { ...model, chances: model.chances.map((one) => (one.chance === chance ? { ...one, likelihood: 0.5 } : one)) };
}

function leastOf(costs: readonly number[]): number {
  return costs.reduce((best, cost, i) => (cost < (costs[best] as number) - NOISE ? i : best), 0);
}

/** Where the line of another option first passes below today's, between the likelihood and 0 or 1. */
function crossing(costAt: (p: number) => readonly number[], from: number, way: 'above' | 'below', today: number): { readonly p: number; readonly to: number } | undefined {
  const end = way === 'above' ? 1 : 0;
  const [start, last] = [costAt(from), costAt(end)];
  let best: { readonly p: number; readonly to: number } | undefined;
  start.forEach((cost, i) => {
    const now = (start[today] as number) - cost;
    const then = (last[today] as number) - (last[i] as number);
    if (then <= NOISE) return;
    // Of a tie the other may be cheaper by the last bits: it is met here and now.
    const p = from + ((end - from) * Math.max(0, -now)) / (then - now);
    if (best === undefined || Math.abs(p - from) < Math.abs(best.p - from)) best = { p, to: i };
  });
  return best;
}
