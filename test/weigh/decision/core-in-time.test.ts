import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide } from '../../../src/weigh/index.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { asChances, everyState, withCore } from './states.js';
import { decideText, oneFile, weighFresh } from './weighing.js';

// Monday 30 November. The part is there at once, so the core is due on Tuesday 1 December: two days of eight hours are in time.
const text = (option: string, shop = '') => `steelyard 1
shop "S"
  workday 8 h
  rate bench 100.00
${shop}estimate "E"
  start 2026-11-30
option one "One"
  part "Unit" 1000.00 rebuilt
    core 400.00 due 1 d
${option}`;

const average = (option: string) => decideText(text(option)).of('one').average;

describe('on average a core comes back as often as it is back in time (by hand)', () => {
  it('a chance that takes it past the day loses the refund where it happens', () => {
    // 12 h are two days, with 5 h more three.
    expect(average('  labour "W" 12 h\n  chance "C" 30%\n    labour "More" 5 h\n')).toBeCloseTo(1000 + 1200 + 0.3 * (500 + 400), 9);
    expect(average('  labour "W" 12 h\n  chance "C" 30%\n    labour "More" 3 h\n')).toBeCloseTo(1000 + 1200 + 0.3 * 300, 9);
  });

  it('a part that is waited for moves the day too, one that is there and what comes back later do not', () => {
    expect(average('  labour "W" 12 h\n  chance "C" 30%\n    part "X" 50.00 new arrives 2 d\n')).toBeCloseTo(1000 + 1200 + 0.3 * (50 + 400), 9);
    expect(average('  labour "W" 12 h\n  chance "C" 30%\n    part "X" 50.00 new\n')).toBeCloseTo(1000 + 1200 + 0.3 * 50, 9);
    expect(average('  labour "W" 12 h\n  chance "C" 30% comeback\n    labour "More" 5 h\n')).toBeCloseTo(1000 + 1200 + 0.3 * 500, 9);
  });

  it('two that only together are too much lose it where both happen', () => {
    const chance = (name: string) => `  chance ${name} "${name}" 50%\n    labour "More ${name}" 2 h\n`;
    expect(average(`  labour "W" 13 h\n${chance('a')}${chance('b')}`)).toBeCloseTo(1000 + 1300 + 200 + 0.25 * 400, 9);
  });

  it('lengths with three figures: as often as in the drawn cases, so that both give one average', () => {
    const { average: mean, risk } = decideText(text('  labour "W" 10 / 15 / 24 h\n')).of('one');
    const late = [...(risk?.cases.days ?? [])].filter((days) => days > 2).length / 1000;
    expect([late > 0.2, late < 0.6]).toEqual([true, true]);
    // (10 + 4 × 15 + 24)/6 hours come to 1,566.67.
    expect(mean).toBeCloseTo(1000 + 1566.67 + late * 400, 6);
    expect(Math.abs((risk?.inAll.mean ?? 0) - mean)).toBeLessThan(0.5);
  });

  it('is never above the most that is possible, nor below the least', () => {
    const { average: mean, risk } = decideText(`steelyard 1\nshop "S"\n  workday 8 h\n  rate w 100.00\nestimate "E"\n  start 2026-11-30\naccess out "Out"\n  remove 1 h\n  refit 9 h\noption one "One"\n  labour "Swap" 1 h with out\n  part "Unit" 1000.00 rebuilt arrives 3 / 4 / 6 d\n    core 400.00 due 2 d\n`).of('one');
    expect([mean > 2100, mean < 2500]).toEqual([true, true]);
    expect(mean).toBeCloseTo(risk?.inAll.mean ?? NaN, 6);
  });

  it('what always or never happens is asked about as if it might', () => {
    const chance = (percent: number) => `  chance c "C" ${percent}%\n    labour "More" 17 h\noption two "Two"\n  part "P" 2500.00 new\n`;
    const flips = (percent: number) => decideText(text(chance(percent))).flips.filter(({ measure }) => measure === 'average').map(({ flips: at, to }) => [at.toFixed(6), to.name]);
    // One is 1,000.00 and p × (1,700.00 + 400.00): 2,500.00 at p = 1500/2100.
    expect(flips(0)).toEqual([[(150_000 / 2100).toFixed(6), 'two']]);
    expect(flips(100)).toEqual([[(150_000 / 2100).toFixed(6), 'one']]);
  });

  it('with more chances that move the day than are planned together it counts as quoted, and that is said', () => {
    const chances = (count: number) => Array.from({ length: count }, (_, i) => `  chance c${i} "C${i}" 50%\n    labour "More ${i}" 1 h\n`).join('');
    const decision = (count: number) => decide(weighFresh(oneFile(text(`  labour "W" 16 h\n${chances(count)}`))).comparison);
    expect([decision(8).beyond, decision(9).beyond]).toEqual([[], ['sets']]);
    // In time only where nothing turns up.
    expect(decision(8).options[0]?.average).toBeCloseTo(2600 + 400 + (1 - 0.5 ** 8) * 400, 9);
    expect(decision(9).options[0]?.average).toBeCloseTo(2600 + 450, 9);
  });
});

describe('what an inspection saves where what turns up may make a core too late', () => {
  it('equals the sums over every state, each weighed as a text of its own, and is from nothing to that of knowing', PATIENT, () => {
    const seen = { all: 0, saving: 0, late: 0 };
    fc.assert(fc.property(withCore(3), fc.integer({ min: 90, max: 150 }), fc.array(fc.tuple(fc.nat({ max: 100 }), fc.nat({ max: 100 })), { minLength: 3, maxLength: 3 }), (all, percent, finds) => {
      const states = everyState(all);
      const other = ((states[0]?.inAll ?? 0) * percent) / 100;
      const looks = finds.slice(0, all.chances.length);
      const decision = decideText(`${asChances(all)}option two "Two"\n  fee "All of it" ${other.toFixed(2)}\ninspect look "Look" 20.00\n${looks.map(([shows, wrongly], i) => `  finds turn-${i} ${shows}% wrongly ${wrongly}%\n`).join('')}`);
      // With tax.
      const two = decision.of('two').weighed.inAll.likely.toNumber();
      const least = (weight: (happened: readonly boolean[]) => number) => {
        const both = [0, 0];
        for (const { happened, share, inAll } of states) [inAll, two].forEach((cost, i) => (both[i] = (both[i] as number) + share * weight(happened) * cost));
        return Math.min(...both);
      };
      const sets = Array.from({ length: 1 << looks.length }, (_, set) => looks.map((__, i) => (set & (1 << i)) !== 0));
      const after = sets.reduce((sum, shown) => sum + least((happened) => looks.reduce((product, [shows, wrongly], i) => {
        const p = (happened[i] === true ? shows : wrongly) / 100;
        return product * (shown[i] === true ? p : 1 - p);
      }, 1)), 0);
      const knowing = sets.reduce((sum, known) => sum + least((happened) => (known.every((one, i) => one === happened[i]) ? 1 : 0)), 0);
      const before = least(() => 1);
      const [look] = decision.inspections;
      if (look === undefined) throw new Error('no inspection');
      seen.all++;
      if (before - after > 0.01) seen.saving++;
      if (new Set(states.map(({ late }) => late)).size > 1) seen.late++;
      expect(look.worth).toBeCloseTo(before - after, 6);
      expect(look.perfectWorth).toBeCloseTo(before - knowing, 6);
      expect(look.worth).toBeGreaterThanOrEqual(0);
      expect(look.worth).toBeLessThanOrEqual(look.perfectWorth);
    }), runs(8803, 40));
    expect(seen.all).toBe(40);
    expect(seen.saving).toBeGreaterThan(4);
    expect(seen.late).toBeGreaterThan(8);
  });
});
