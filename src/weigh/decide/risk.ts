import type { Span } from '../../language/index.js';
import type { Estimate } from '../../estimate/index.js';
import { betaPert, createDraws, happening, needsOf, shareSmallest, type Draws } from '../chance/index.js';
import type { Money } from '../money.js';
import { startOf } from '../ready.js';
import { createTape } from '../tape.js';
import { shopTimeOf } from '../timetable.js';
import { CASES, SEED } from './cases.js';
import type { ModelChance, OptionModel } from './model.js';
import { OptionRun, type OptionRisk } from './option-run.js';
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
  const runs = models.map((model) => new OptionRun(model, happened.get(model) as readonly Uint8Array[], tape, time));
  const ranged = tape.leaves.filter((leaf) => leaf.low !== leaf.high);
  const keys = keysOf(tape.leaves);
  const columns = ranged.map((leaf) => draws.amounts(keys.get(leaf) as string, betaPert(leaf)));
  tape.run();
  for (let i = 0; i < CASES; i++) {
    ranged.forEach((leaf, k) => tape.set(leaf, (columns[k] as Float64Array)[i] as number));
    for (const run of runs) run.setChances(i, tape);
    tape.run();
    for (const run of runs) run.takeCase(i, tape);
  }
  // The cheapest of one alone says nothing.
  const shares = competing.size < 2 ? [] : shareSmallest(runs.filter(({ model }) => competing.has(model)).map(({ inAll }) => inAll));
  let next = 0;
  return { cases: CASES, options: runs.map((run) => run.result(competing.has(run.model) ? shares[next++] : undefined, ranged, columns)) };
}

/**
 * In which cases each chance of a model happens, in the order of its chances. What several options share is drawn once; where
 * one does anyway the work that in another a chance brings, the chances of that work hang on nothing there.
 */
function happenings(models: readonly OptionModel[], draws: Draws): ReadonlyMap<OptionModel, readonly Uint8Array[]> {
  const drawn = new Map<Span, Uint8Array>();
  const named = new Map<string, number>();
  const draw = ({ chance, likelihood }: ModelChance): Uint8Array => {
    const plain = `chance ${chance.name ?? lineAt(chance.at).key}`;
    const before = named.get(plain) ?? 0;
    named.set(plain, before + 1);
    const column = draws.happens(before === 0 ? plain : `${plain}|${before + 1}`, likelihood);
    drawn.set(chance.at, column);
    return column;
  };
  return new Map(models.map((model) => {
    const would = model.chances.map((one) => drawn.get(one.chance.at) ?? draw(one));
    return [model, whereTheyCan(would, needsOf(model.chances))];
  }));
}

/** Of the cases in which each would happen those in which it can, since one that it hangs on does. */
function whereTheyCan(would: readonly Uint8Array[], needs: readonly number[]): readonly Uint8Array[] {
  if (needs.every((some) => some === 0)) return would;
  const columns = would.map((column) => new Uint8Array(column.length));
  for (let i = 0; i < CASES; i++) {
    const happened = happening(would.reduce((bits, column, k) => bits | ((column[i] as number) << k), 0), needs);
    columns.forEach((column, k) => (column[i] = (happened >> k) & 1));
  }
  return columns;
}
