import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide, type InspectionWeighed } from '../../../src/weigh/index.js';
import { randomEstimate } from '../../support/random-estimate.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { decideText, oneFile, soundText, weighFresh } from './weighing.js';

function inspected(text: string): InspectionWeighed {
  const [first] = decideText(text).inspections;
  if (first === undefined) throw new Error(`nothing inspected in\n${text}`);
  return first;
}

// Printed decision trees, written as options: what an action brings at best is what the vehicle is worth after it, and
// the bad state is a chance that takes the rest away. Costs then differ from the printed gains by one amount for all.
describe('Goferbroke: Hillier & Lieberman, Introduction to Operations Research (read)', () => {
  const text = (price: string, finds: string) => `steelyard 1
shop "S"
option drill "Drill"
  worth 700.00
  chance dry "No oil" 75%
    part "What drilling loses" 800.00 new
option sell "Sell the land"
  worth 90.00
inspect survey "Seismic survey" ${price}
  finds dry ${finds}
`;
  // Favourable in 60 % where there is oil and in 20 % where it is dry: unfavourable, which shows dry, in 80 % and 40 %.
  const found = inspected(text('30.00', '80% wrongly 40%'));

  it('drilling brings 100 on average, selling 90', () => {
    const { of } = decideText(text('30.00', '80% wrongly 40%'));
    expect([700 - of('drill').average, 700 - of('sell').average]).toEqual([100, 90]);
    expect(found.choose).toBe('drill');
  });

  it('the survey is worth 53 and 23 after its price, as printed (153 with it, 123 net, against 100); knowing would be worth 142.5', () => {
    expect([found.worth, found.net, found.perfectWorth].map((one) => Number(one.toFixed(9)))).toEqual([53, 23, 142.5]);
    expect(found.price.likely.toFixed(2)).toBe('30.00');
    expect(found.verdict).toBe('worth doing');
  });

  it('favourable in .3 of the cases: drill; unfavourable in .7: sell', () => {
    const results = found.results.map(({ shows, chance, choose, changes }) => ({ shows, chance: Number(chance.toFixed(9)), choose, changes }));
    expect(results.sort((a, b) => a.chance - b.chance)).toEqual([
      { shows: [], chance: 0.3, choose: 'drill', changes: false },
      { shows: ['No oil'], chance: 0.7, choose: 'sell', changes: true },
    ]);
  });

  it('at 60.00 it is not worth its price; one that always tells is worth 142.5; one that tells nothing, nothing (computed)', () => {
    expect(inspected(text('60.00', '80% wrongly 40%')).verdict).toBe('not worth its price');
    expect(inspected(text('30.00', '100%')).worth).toBeCloseTo(142.5, 9);
    expect(inspected(text('30.00', '40% wrongly 40%'))).toMatchObject({ worth: 0, verdict: 'cannot change the choice' });
  });
});

it('Thompson Lumber: Render & Stair, Quantitative Analysis for Management (from memory, recomputed without rounded posteriors): 60 000 and 19 000', () => {
  // One market for both plants, which lose 380 000 and 120 000 in it: the same work, by way in.
  const found = inspected(`steelyard 1
shop "S"
  rate bench 100.00
access large-plant "Large"
access small-plant "Small"
labour market "Market" 0 h
  chance poor "Unfavourable market" 50%
    labour "What the plant loses"
      takes 3800 h with large-plant
      takes 1200 h with small-plant
option large "Large plant"
  do market
  way large-plant
  worth 200000
option small "Small plant"
  do market
  way small-plant
  worth 100000
option none "None"
  worth 0
inspect survey "Market survey" 10000
  finds poor 80% wrongly 30%
`);
  expect([found.worth, found.net, found.perfectWorth].map((one) => Number(one.toFixed(6)))).toEqual([19_000, 9000, 60_000]);
  expect([found.choose, found.verdict]).toEqual(['small', 'worth doing']);
  expect(found.results.map(({ shows, chance, choose }) => [shows.length, Number(chance.toFixed(9)), choose]).sort()).toEqual([[0, 0.45, 'large'], [1, 0.55, 'small']]);
});

it('Winston, Operations Research, ch. 13 (from memory, recomputed): a survey for 30 that is worth 24 is not worth its price', () => {
  const found = inspected(`steelyard 1
shop "S"
option national "Sell nationally"
  worth 450
  chance fails "Fails nationally" 45%
    part "What is lost" 400 new
option keep "Keep it"
  worth 150
inspect survey "Local survey" 30
  finds fails 80% wrongly 7.272727%  # 4/55, cut
`);
  expect([found.worth, found.net, found.perfectWorth].map((one) => Number(one.toFixed(4)))).toEqual([24, -6, 45]);
  expect([found.choose, found.verdict]).toEqual(['national', 'not worth its price']);
});

describe('the price of looking (computed)', () => {
  it('its hours at its class and its own price, with tax, without the percentage fees of the shop', () => {
    const found = inspected('steelyard 1\nshop "S"\n  rate bench 100.00 usual\n  rate fine 150.00\n  tax levy 10% on labour, fees by invoice\n  fee supplies "Supplies" 5% of labour\noption one "One"\n  chance c "C" 50%\n    part "X" 500.00 new\noption two "Two"\n  part "Q" 200.00 new\ninspect look "Look" 20.00 30 min class fine\n  finds c 100%\n');
    expect(found.price.likely.toFixed(2)).toBe('104.50');
  });

  it('two chances that one look tells apart: by hand over four states', () => {
    // One: 0, A adds 100 (50 %), B adds 200 (50 %). Two: 120. Averages 150 and 120. Knowing both: 0, 100, 120, 120.
    const found = inspected('steelyard 1\nshop "S"\noption one "One"\n  chance a "A" 50%\n    part "X" 100.00 new\n  chance b "B" 50%\n    part "Y" 200.00 new\noption two "Two"\n  part "Q" 120.00 new\ninspect look "Look" 5.00\n  finds a 100%\n  finds b 100%\n');
    expect([found.choose, found.perfectWorth, found.worth]).toEqual(['two', 35, 35]);
    expect(found.results.map(({ shows, choose }) => `${shows.join('+')}: ${choose ?? ''}`).sort()).toEqual([': one', 'A+B: two', 'A: one', 'B: two']);
  });

  it('a chance below another is looked for as often as both happen', () => {
    // A 50 %, and below it B 50 %: B in 25 %. One: 0, 10, 410; two: 90. Averages 105 and 90.
    const found = inspected('steelyard 1\nshop "S"\noption one "One"\n  chance a "A" 50%\n    part "X" 10.00 new\n    chance b "B" 50%\n      part "Y" 400.00 new\noption two "Two"\n  part "Q" 90.00 new\ninspect look "Look" 5.00\n  finds b 100%\n');
    // Known not to be B: 2/3 of nothing and 1/3 of 10.
    expect(found.worth).toBeCloseTo(90 - (0.75 * (10 / 3) + 0.25 * 90), 9);
    expect(found.results.map(({ chance }) => chance).sort()).toEqual([0.25, 0.75]);
  });
});

/** The average cost in all of each option in each state, weighed as texts of their own, and Bayes by hand. */
function byHand(one: number, p: number, more: number, two: number, shows: number, wrongly: number): { readonly worth: number; readonly perfect: number } {
  const free = Math.min(one + p * more, two);
  const positive = p * shows + (1 - p) * wrongly;
  const after = (share: number, happens: number) => (share === 0 ? 0 : Math.min(one * share + happens * more, two * share));
  return { worth: free - after(positive, p * shows) - after(1 - positive, p * (1 - shows)), perfect: free - p * Math.min(one + more, two) - (1 - p) * Math.min(one, two) };
}

describe('any inspection', () => {
  it('60 random pairs of options and looks equal Bayes by hand, on costs that were weighed', PATIENT, () => {
    const drawn = fc.record({ p: fc.nat({ max: 100 }), shows: fc.nat({ max: 100 }), wrongly: fc.nat({ max: 100 }), hours: fc.integer({ min: 10, max: 50 }), more: fc.integer({ min: 10, max: 90 }), two: fc.integer({ min: 20, max: 90 }) });
    let changing = 0;
    fc.assert(fc.property(drawn, ({ p, shows, wrongly, hours, more, two }) => {
      const text = (one: string) => `steelyard 1\nshop "S"\n  rate bench 97.35\n  tax levy 7.25% on labour by item\n  fee supplies "Supplies" 5% of labour cap 20.00\noption one "One"\n  labour "W" ${hours / 10} h\n${one}option two "Two"\n  labour "V" ${two / 10} h\n`;
      const bad = soundText(text(`  labour "M" ${more / 10} h\n`)).option('one').inAll.likely.toNumber();
      const good = soundText(text('')).option('one').inAll.likely.toNumber();
      const other = soundText(text('')).option('two').inAll.likely.toNumber();
      const found = inspected(`${text(`  chance c "C" ${p}%\n    labour "M" ${more / 10} h\n`)}inspect look "Look" 10.00\n  finds c ${shows}% wrongly ${wrongly}%\n`);
      const own = byHand(good, p / 100, bad - good, other, shows / 100, wrongly / 100);
      expect([found.worth, found.perfectWorth]).toEqual([expect.closeTo(own.worth, 6), expect.closeTo(own.perfect, 6)]);
      if (found.worth > 0.01) changing++;
    }), runs(9101, 60));
    expect(changing).toBeGreaterThan(5);
  });

  it('random estimates: worth from 0 to that of knowing; 0 where no result changes the choice; results add up to 1', PATIENT, () => {
    let seen = 0;
    fc.assert(fc.property(randomEstimate, (text) => {
      const fresh = weighFresh(oneFile(text));
      for (const { worth, perfectWorth, net, price, results, verdict } of decide(fresh.comparison).inspections) {
        seen++;
        expect(worth).toBeGreaterThanOrEqual(0);
        expect(worth).toBeLessThanOrEqual(perfectWorth + 1e-6);
        expect(net).toBeCloseTo(worth - price.likely.toNumber(), 6);
        expect(results.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
        if (!results.some(({ changes }) => changes)) expect([worth < 1e-6, verdict]).toEqual([true, 'cannot change the choice']);
      }
    }), runs(9102, 60));
    expect(seen).toBeGreaterThan(0);
  });
});
