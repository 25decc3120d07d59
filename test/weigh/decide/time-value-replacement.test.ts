import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Decimal } from '../../../src/vocabulary/index.js';
import { factor, type Reckoned } from '../../../src/weigh/decide/time-value.js';
import { economicLife, keepOrReplace, marginalCosts } from '../../../src/weigh/decide/time-value-replacement.js';
import { PATIENT, runs } from '../../support/random-runs.js';

const d = (value: string | number) => new Decimal(value);
const all = (...values: readonly number[]) => values.map(d);
const shown = (values: readonly Decimal[], decimals = 0) => values.map((value) => value.toFixed(decimals));

function got<T>(answer: Reckoned<T>): T {
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.problem));
  return answer.value;
}

describe('printed cases', () => {
  it('Newnan, Engineering Economic Analysis, ch. 13, a defender at 15 % (read): lowest in the third year', () => {
    const life = got(economicLife(all(16_000, 14_000, 13_500, 15_300, 17_500), d('0.15')));
    expect(shown(life.yearly)).toEqual(['16000', '15070', '14618', '14754', '15162']);
    expect(life.years).toBe(3);
    expect(life.lowest.toFixed(0)).toBe('14618');
  });

  // Sullivan, Wicks & Koelling, Engineering Economy, ch. 9, a lift truck and its successor at 10 % (from memory, recomputed).
  const challenger = { worthNow: d(20_000), worths: all(15_000, 11_250, 8500, 6500, 4750), running: all(2000, 3000, 4620, 8000, 12_000), rate: d('0.1') };
  const defender = { worthNow: d(5000), worths: all(4000, 3000, 2000, 1000), running: all(5500, 6600, 7800, 8800), rate: d('0.1') };

  it('Sullivan et al., ch. 9: marginal costs from worths and running', () => {
    expect(shown(got(marginalCosts(challenger)))).toEqual(['9000', '8250', '8495', '10850', '14400']);
    expect(shown(got(marginalCosts(defender)))).toEqual(['7000', '8000', '9100', '10000']);
  });

  it('Sullivan et al., ch. 9: the challenger’s economic life is 3 years at 8598, the defender goes when a year costs more', () => {
    const found = got(keepOrReplace({ defender: got(marginalCosts(defender)), challenger: got(marginalCosts(challenger)), rate: d('0.1') }));
    // With table factors the book prints 9084 for the fourth year.
    expect(shown(found.challenger.yearly)).toEqual(['9000', '8643', '8598', '9083', '9954']);
    expect([found.challenger.years, found.defender.years]).toEqual([3, 1]);
    expect(shown(found.defender.yearly)).toEqual(['7000', '7476', '7967', '8405']);
    expect([found.verdict, found.keepYears]).toEqual(['keep', 2]);
  });
});

describe('edges (computed)', () => {
  const decided = (defender: readonly number[], challenger: readonly number[], rate = '0.1') => {
    const { verdict, keepYears } = got(keepOrReplace({ defender: all(...defender), challenger: all(...challenger), rate: d(rate) }));
    return [verdict, keepYears];
  };

  it.each([
    ['dearer in every year', [120, 130], [100, 110], 'replace', 0],
    ['cheaper in every year', [80, 90, 95], [100, 110], 'keep', 3],
    ['rising past the challenger', [80, 99, 101, 90], [100, 110], 'keep', 4],
    ['rising past it and staying there', [80, 99, 101, 120], [100, 110], 'keep', 2],
    ['a dear first year that later ones make up', [110, 50, 50], [100], 'keep', 3],
    ['a dear first year that later ones do not make up', [150, 90], [100], 'replace', 0],
    ['a tie', [100, 100], [100], 'keep', 2],
    ['a tie, but a dearer year after it', [100, 101], [100], 'keep', 1],
  ] as const)('%s', (_, defender, challenger, verdict, years) => {
    expect(decided(defender, challenger)).toEqual([verdict, years]);
  });

  it('a year that costs exactly what the challenger does is a tie, digits without end or not', () => {
    for (const rate of ['0.1', '0.07', '0.0333']) {
      const challenger = all(120, 110, 113);
      const same = got(economicLife(challenger, d(rate))).lowest;
      const found = got(keepOrReplace({ defender: [d(80), same, same, same, same.plus('0.01')], challenger, rate: d(rate) }));
      expect([found.verdict, found.keepYears], rate).toEqual(['keep', 4]);
    }
  });

  it('equal costs make an equal yearly cost at any rate, and the shortest life', () => {
    for (const rate of ['0', '0.07', '0.333333333333', '-0.1']) {
      const life = got(economicLife(all(3, 3, 3, 3, 3, 3), d(rate)));
      expect(life.yearly.map((one) => one.toFixed())).toEqual(['3', '3', '3', '3', '3', '3']);
      expect(life.years).toBe(1);
    }
  });

  it('refuses no years, too many, figures that are not finite, bad rates, worths that are missing', () => {
    const problem = (marginal: readonly Decimal[], rate: Decimal) => {
      const answer = economicLife(marginal, rate);
      return answer.kind === 'refused' ? answer.problem : undefined;
    };
    expect(problem([], d('0.1'))).toEqual({ kind: 'no years' });
    expect(problem(Array.from({ length: 101 }, () => d(1)), d('0.1'))).toEqual({ kind: 'too many years', years: 101, most: 100 });
    expect(problem([d(NaN)], d('0.1'))).toEqual({ kind: 'amount not finite', amount: d(NaN) });
    expect(problem([d(1)], d(-1))).toEqual({ kind: 'rate out of range', rate: d(-1) });
    expect(keepOrReplace({ defender: [d(1)], challenger: [], rate: d(0) })).toEqual({ kind: 'refused', problem: { kind: 'no years' } });
    expect(keepOrReplace({ defender: [], challenger: [d(1)], rate: d(0) })).toEqual({ kind: 'refused', problem: { kind: 'no years' } });
    expect(marginalCosts({ worthNow: d(5), worths: [d(4)], running: all(1, 1), rate: d(0) })).toEqual({ kind: 'refused', problem: { kind: 'wrong length', length: 1, needed: 2 } });
    expect(marginalCosts({ worthNow: d(Infinity), worths: [d(4)], running: all(1), rate: d(0) })).toEqual({ kind: 'refused', problem: { kind: 'amount not finite', amount: d(Infinity) } });
  });
});

describe('laws, on random costs', () => {
  const costs = fc.array(fc.integer({ min: -20, max: 200 }), { minLength: 1, maxLength: 8 });
  const rate = fc.integer({ min: -10, max: 40 }).map((hundredths) => d(hundredths).div(100));

  it('the yearly cost is Σ cost × P/F, times A/P', PATIENT, () => {
    fc.assert(fc.property(costs, rate, (marginal, i) => {
      const life = got(economicLife(all(...marginal), i));
      for (const [at, yearly] of life.yearly.entries()) {
        const worth = marginal.slice(0, at + 1).reduce((sum, cost, k) => sum.plus(got(factor('P/F', i, k + 1)).times(cost)), d(0));
        expect(yearly.minus(worth.times(got(factor('A/P', i, at + 1)))).abs().lt('1e-30')).toBe(true);
      }
      expect(life.lowest.eq(life.yearly[life.years - 1] as Decimal)).toBe(true);
    }), runs(8211, 30));
  });

  it('the years to keep make the present worth of a long row of years lowest, each count tried; kept just where the lowest is not above the challenger’s', PATIENT, () => {
    const seen = { keep: 0, replace: 0 };
    fc.assert(fc.property(costs, costs, rate, (defender, challenger, i) => {
      const found = got(keepOrReplace({ defender: all(...defender), challenger: all(...challenger), rate: i }));
      seen[found.verdict]++;
      const horizon = 9;
      const discounts = Array.from({ length: horizon }, (_, k) => got(factor('P/F', i, k + 1)));
      const worth = (years: number) => discounts.map((discount, k) => discount.times(k < years ? (defender[k] as number) : found.challenger.lowest)).reduce((sum, one) => sum.plus(one), d(0));
      const kept = worth(found.keepYears);
      for (let years = 0; years <= defender.length; years++) expect(kept.lte(worth(years).plus('1e-18')), `${years}`).toBe(true);
      expect(found.verdict === 'keep').toBe(found.defender.lowest.lte(found.challenger.lowest));
    }), runs(8212, 80));
    expect(Math.min(seen.keep, seen.replace)).toBeGreaterThan(10);
  });
});
