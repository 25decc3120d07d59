import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Span } from '../../../src/language/index.js';
import type { Estimate, MarkupBand } from '../../../src/estimate/index.js';
import { createTape, type Tape } from '../../../src/weigh/tape.js';
import { plansToSearch } from '../../../src/weigh/plan.js';
import type { Weighed } from '../../../src/weigh/index.js';
import { randomEstimate } from '../../support/random-estimate.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { sampleFiles } from '../weighed.js';
import { closeEstimate } from './random-close.js';
import { oneFile, sampleWithShop, soundText, weighFresh, withNumber, type Fresh } from './weighing.js';

/** Half of the smallest coin of any currency here: closer than this is to the coin. */
const HALF_COIN = 0.0005 / 2;

function expectQuoted({ comparison }: Fresh): number {
  const { money, estimate, options } = comparison;
  const tape = createTape(money, estimate.shop.rounding);
  const figures = options.flatMap(({ totals, inAll, net, penalty }) => [totals.total, totals.tax, inAll, net, penalty.money, penalty.hours]);
  const nodes = figures.map((figure) => tape.node(figure));
  for (const point of ['likely', 'low', 'high', 'likely'] as const) {
    for (const leaf of tape.leaves) tape.set(leaf, leaf[point]);
    tape.run();
    const off = figures.filter((figure, i) => Math.abs(tape.valueOf(nodes[i] as number) - figure[point].toNumber()) > (figure.unit === 'money' ? HALF_COIN : 1e-9));
    expect(off.map(({ label }) => `${label} at ${point}`)).toEqual([]);
  }
  return figures.length * 4;
}

describe('the tape at the written figures gives the quoted ones to the coin', () => {
  it.each(sampleFiles)('sample %s: likely, low and high', (file) => {
    const files = file === 'shop.yard' ? sampleWithShop('heron-pump.yard') : sampleWithShop(file);
    expect(expectQuoted(weighFresh(files))).toBeGreaterThan(0);
  });

  it('80 random estimates: likely, low and high', PATIENT, () => {
    let figures = 0;
    fc.assert(fc.property(randomEstimate, (text) => void (figures += expectQuoted(weighFresh(oneFile(text))))), runs(6101, 80));
    expect(figures).toBeGreaterThan(2500);
  });
});

/** The table that makes the price of each cost, found here from the estimate alone. */
function tablesOf({ shop, options, access }: Estimate): Map<Span, readonly MarkupBand[]> {
  const tables = new Map<Span, readonly MarkupBand[]>();
  for (const { parts, sublets } of [...options, ...access]) {
    for (const { cost } of parts) if (cost !== undefined) tables.set(cost.at, shop.markup.parts);
    for (const { cost } of sublets) if (cost !== undefined) tables.set(cost.at, shop.markup.sublets);
  }
  return tables;
}

describe('with one written figure changed the tape gives what a weighing of the changed text does', () => {
  /** Total of the cheapest plan at the tape's values. */
  const least = (tape: Tape, nodes: readonly number[]) => Math.min(...nodes.map((node) => tape.valueOf(node)));

  it.each([['random estimates', randomEstimate, 70], ['estimates that lie close', closeEstimate, 160]] as const)('changes in %s: bands of markup, the cheapest mode and the cheapest ways in change with them', PATIENT, (which, arbitrary, count) => {
    const seen = { compared: 0, otherBand: 0, otherWays: 0, otherMode: 0 };
    const change = fc.record({ text: arbitrary, at: fc.nat({ max: 10_000 }), percent: fc.constantFrom(0, 10, 40, 70, 95, 104, 130, 210, 500, 1400) });
    fc.assert(fc.property(change, ({ text, at, percent }) => {
      const fresh = weighFresh(oneFile(text));
      const { money, estimate, options } = fresh.comparison;
      const tape = createTape(money, estimate.shop.rounding, tablesOf(estimate));
      const nodes = options.map(({ option }) => plansToSearch({ ...option, access: estimate.access }, estimate.shop, money, 64).map(({ totals }) => tape.node(totals.total)));
      // Every second time a figure of hours: these decide between ways in.
      const hours = tape.leaves.filter(({ figure }) => figure.unit === 'hours' || figure.unit === 'minutes');
      const among = at % 2 === 0 && hours.length > 0 ? hours : tape.leaves;
      const leaf = among[(at >> 1) % Math.max(1, among.length)];
      if (leaf === undefined) return;
      const step = leaf.figure.unit === 'minutes' ? 1 : 100;
      const value = Math.round((leaf.likely * percent * step) / 100) / step;
      const again = weighFresh(fresh.rewritten(leaf.at, withNumber(fresh.wordsAt(leaf.at), String(value))));
      if (!again.sound) return;
      for (const one of [tape.leaves[0], leaf]) {
        if (one === undefined) continue;
        tape.set(leaf, value);
        tape.run();
      }
      options.forEach((weighed, i) => {
        if ((nodes[i] as number[]).length === 0) return;
        const real = again.comparison.options[i] as Weighed;
        seen.compared++;
        if (ways(real) !== ways(weighed)) seen.otherWays++;
        if (modes(real) !== modes(weighed)) seen.otherMode++;
        if (bands(real) !== bands(weighed)) seen.otherBand++;
        expect(least(tape, nodes[i] as number[]), `${weighed.option.name}: ${leaf.figure.label} ${fresh.wordsAt(leaf.at)} becomes ${value}\n${text}`).toBeCloseTo(real.totals.total.likely.toNumber(), 6);
      });
      // What rests on the figure alone, worked anew, comes to the same as everything worked anew.
      const all = nodes.flat().map((node) => tape.valueOf(node));
      tape.set(leaf, leaf.likely);
      tape.runFrom(leaf);
      tape.set(leaf, value);
      tape.runFrom(leaf);
      expect(nodes.flat().map((node) => tape.valueOf(node))).toEqual(all);
    }), runs(6102, count));
    expect(seen.compared, JSON.stringify(seen)).toBeGreaterThan(which === 'random estimates' ? 50 : 300);
    if (which !== 'random estimates') expect(Math.min(seen.otherWays, seen.otherMode, seen.otherBand), JSON.stringify(seen)).toBeGreaterThan(7);
  });

  it.each([
    ['a cost beyond the last band, and back under its end', 'cost 300.00', [10, 99.99, 100, 100.01, 250, 250.01, 400]],
    ['a cost within the first band', 'cost 40.00', [0, 100, 100.01, 251]],
  ] as const)('%s: the band is looked up anew (computed: 80 %% to 100.00, 50 %% to 250.00, none beyond)', (_, cost, values) => {
    const text = (words: string) => `steelyard 1\nshop "S"\n  markup 80% to 100.00\n  markup 50% to 250.00\noption one "One"\n  part "P" 2 at ${words} new\n`;
    const { comparison } = soundText(text(cost));
    const tape = createTape(comparison.money, comparison.estimate.shop.rounding, tablesOf(comparison.estimate));
    const node = tape.node((comparison.options[0] as Weighed).totals.total);
    const leaf = tape.leaves.find(({ figure }) => figure.label === 'Cost');
    if (leaf === undefined) throw new Error('no cost');
    const byHand = (value: number) => Math.round(2 * value * (value <= 100 ? 1.8 : value <= 250 ? 1.5 : 1) * 100) / 100;
    for (const value of values) {
      tape.set(leaf, value);
      tape.runFrom(leaf);
      expect(tape.valueOf(node)).toBeCloseTo(byHand(value), 6);
      expect(soundText(text(`cost ${value}`)).option('one').totals.total.likely.toNumber()).toBeCloseTo(byHand(value), 6);
    }
  });

  it('a way in that no job needs as it stands is paid for when another mode becomes the cheaper (computed)', () => {
    // In its place 2 h at 100.00, or 1 h with the engine out, which costs 500.00: from 6 h on (600.00) it comes out.
    const text = (hours: number) => `steelyard 1\nshop "S"\n  rate bench 100.00\naccess out "Out"\n  remove 5 h\noption one "One"\n  labour "W" ${hours} h\n    takes 1 h with out\n`;
    const { comparison } = soundText(text(2));
    const [weighed] = comparison.options as [Weighed];
    const tape = createTape(comparison.money, comparison.estimate.shop.rounding);
    const nodes = plansToSearch({ ...weighed.option, access: comparison.estimate.access }, comparison.estimate.shop, comparison.money, 64).map(({ totals }) => tape.node(totals.total));
    expect(nodes).toHaveLength(2);
    const leaf = tape.leaves.find(({ likely, figure }) => likely === 2 && figure.unit === 'hours');
    if (leaf === undefined) throw new Error('no hours');
    for (const [hours, total] of [[2, 200], [5.99, 599], [6, 600], [6.5, 600], [20, 600]] as const) {
      tape.set(leaf, hours);
      tape.run();
      expect([least(tape, nodes), soundText(text(hours)).option('one').totals.total.likely.toNumber()]).toEqual([total, total]);
    }
  });
});

const ways = ({ planned }: Weighed) => planned.chosen.paid.map(({ name }) => name).sort().join();
const modes = ({ planned }: Weighed) => planned.chosen.jobs.map(({ mode }) => mode.with.map(({ name }) => name).join('+')).join();
/** Of each goods line the percentages in its price. */
const bands = ({ totals }: Weighed) => totals.lines.map(({ amount }) => amount.from.map(({ step, from }) => (step.kind === 'raised' ? String(from[1]?.likely) : step.kind)).join()).join(';');
