import type { Span } from '../../language/index.js';
import type { Estimate } from '../../estimate/index.js';
import { betaPert, createDraws, shareSmallest, type Draws } from '../chance/index.js';
import type { Money } from '../money.js';
import { startOf } from '../ready.js';
import { createTape, type Leaf } from '../tape.js';
import { shopTimeOf } from '../timetable.js';
import { CASES, SEED } from './cases.js';
import type { OptionModel } from './model.js';
import { OptionRun, type Happening, type Happenings, type OptionRisk } from './option-run.js';
import { keysOf, lineAt } from './written.js';

export interface Risk {
  readonly cases: number;
  readonly options: readonly OptionRisk[];
}

/** Draws the cases: every option meets the same ones, so what several share varies alike in all. Which is the cheapest is asked of those that compete. */
export function riskOf(models: readonly OptionModel[], competing: ReadonlySet<OptionModel>, estimate: Estimate, money: Money): Risk {
  const tape = createTape(money, estimate.shop.rounding);
  const draws = createDraws({ cases: CASES, seed: SEED });
  const happened = happenings(models, draws);
  const time = shopTimeOf(estimate, startOf(estimate));
  const runs = models.map((model) => new OptionRun(model, happened, tape, time));
  const ranged = tape.leaves.filter((leaf) => leaf.low !== leaf.high && !happened.has(leaf.at));
  const keys = keysOf(tape.leaves);
  const columns = ranged.map((leaf) => draws.amounts(keys.get(leaf) as string, betaPert(leaf)));
  tape.run();
  for (let i = 0; i < CASES; i++) {
    ranged.forEach((leaf, k) => tape.set(leaf, (columns[k] as Float64Array)[i] as number));
    for (const { leaf, column } of happened.values()) tape.set(leaf(tape), column[i] as number);
    tape.run();
    for (const run of runs) run.takeCase(i, tape);
  }
  // The cheapest of one alone says nothing.
  const shares = competing.size < 2 ? [] : shareSmallest(runs.filter(({ model }) => competing.has(model)).map(({ inAll }) => inAll));
  let next = 0;
  return { cases: CASES, options: runs.map((run) => run.result(competing.has(run.model) ? shares[next++] : undefined, ranged, columns, happened)) };
}

/** In which cases each chance happens; the same chance in several options happens in the same ones. */
function happenings(models: readonly OptionModel[], draws: Draws): Happenings {
  const found = new Map<Span, Happening>();
  const named = new Map<string, number>();
  for (const { chances } of models) {
    for (const { chance, parent, likelihood, gate } of chances) {
      if (found.has(chance.at)) continue;
      const plain = `chance ${chance.name ?? lineAt(chance.at).key}`;
      const before = named.get(plain) ?? 0;
      named.set(plain, before + 1);
      const own = draws.happens(before === 0 ? plain : `${plain}|${before + 1}`, likelihood);
      const above = parent === undefined ? undefined : found.get((chances[parent] as OptionModel['chances'][number]).chance.at)?.column;
      const column = above === undefined ? own : own.map((one, i) => one & (above[i] as number));
      found.set(chance.at, { column, leaf: (tape) => (tape.node(gate), tape.leafAt(chance.at) as Leaf) });
    }
  }
  return found;
}
