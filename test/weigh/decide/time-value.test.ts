import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Decimal } from '../../../src/vocabulary/index.js';
import { equivalentPerPeriod, factor, monthlyOfNominal, type FactorName, type PerPeriod, type Reckoned } from '../../../src/weigh/decide/time-value.js';
import { PATIENT, runs } from '../../support/random-runs.js';

const d = (value: string | number) => new Decimal(value);

function got<T>(answer: Reckoned<T>): T {
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.problem));
  return answer.value;
}

const f = (name: FactorName, rate: string | number, periods: number) => got(factor(name, d(rate), periods));

describe('printed factors', () => {
  const tables: readonly { readonly source: string; readonly rate: string; readonly n: number; readonly values: Partial<Record<FactorName, string>> }[] = [
    { source: 'interest table of White et al. (read)', rate: '0.15', n: 5, values: { 'A/P': '.29832', 'A/F': '.14832', 'P/A': '3.35216', 'P/F': '.49718' } },
    { source: 'computed', rate: '0.10', n: 5, values: { 'A/P': '.26380', 'A/F': '.16380', 'P/A': '3.79079', 'P/F': '.62092' } },
    ...[
      { rate: '0.06', n: 10, values: { 'P/F': '.5584', 'P/A': '7.3601', 'P/G': '29.6023', 'F/P': '1.7908', 'F/A': '13.1808', 'A/P': '.1359', 'A/F': '.0759', 'A/G': '4.0220' } },
      { rate: '0.08', n: 5, values: { 'P/F': '.6806', 'P/A': '3.9927', 'P/G': '7.3724', 'F/P': '1.4693', 'F/A': '5.8666', 'A/P': '.2505', 'A/F': '.1705', 'A/G': '1.8465' } },
      { rate: '0.10', n: 10, values: { 'P/F': '.3855', 'P/A': '6.1446', 'P/G': '22.8913', 'F/P': '2.5937', 'F/A': '15.9374', 'A/P': '.1627', 'A/F': '.0627', 'A/G': '3.7255' } },
      { rate: '0.12', n: 10, values: { 'P/F': '.3220', 'P/A': '5.6502', 'P/G': '20.2541', 'F/P': '3.1058', 'F/A': '17.5487', 'A/P': '.1770', 'A/F': '.0570', 'A/G': '3.5847' } },
    ].map((row) => ({ source: 'tables of the NCEES FE Reference Handbook (from memory, recomputed)', ...row })),
  ];

  it.each(tables)('$rate, $n periods: $source', ({ rate, n, values }) => {
    for (const [name, text] of Object.entries(values)) {
      const decimals = text.length - text.indexOf('.') - 1;
      expect(f(name as FactorName, rate, n).toFixed(decimals), name).toBe(d(`0${text}`).toFixed(decimals));
    }
  });

  it('8 % to 50 digits after three periods (computed: 1.08 cubed is 1.259712 exactly)', () => {
    expect(f('F/P', '0.08', 3).toFixed()).toBe('1.259712');
    expect(f('F/A', '0.08', 3).toFixed()).toBe('3.2464');
  });

  it('without interest they are counts (the limits of the formulas)', () => {
    const names: readonly FactorName[] = ['F/P', 'P/F', 'F/A', 'A/F', 'P/A', 'A/P', 'P/G', 'A/G'];
    expect(names.map((name) => f(name, 0, 5).toNumber())).toEqual([1, 1, 5, 0.2, 5, 0.2, 10, 2]);
    // A rate near nothing comes to the same, from either side, and so does one that is taken for nothing.
    for (const rate of ['1e-12', '-1e-12', '1e-19', '1e-30', '1e-70']) for (const name of names) expect(f(name, rate, 5).toNumber(), `${name} ${rate}`).toBeCloseTo(f(name, 0, 5).toNumber(), 9);
  });
});

describe('laws of the factors', () => {
  const rate = fc.oneof(fc.integer({ min: -500, max: 3000 }).filter((n) => n !== 0), fc.constantFrom(1, -1)).map((n) => d(n).div(10_000));
  const periods = fc.integer({ min: 1, max: 120 });
  /** Hundreds of comparisons: only one that fails is worth an expectation. */
  const near = (a: Decimal, b: Decimal) => {
    if (!a.minus(b).abs().lte(b.abs().plus(1).times('1e-35'))) expect(a.toFixed(45)).toBe(b.toFixed(45));
  };

  it('identities: (A/P) − (A/F) = i, inverse pairs, F/A = P/A × F/P, A/G = P/G × A/P', PATIENT, () => {
    fc.assert(fc.property(rate, periods, (i, n) => {
      const at = (name: FactorName) => got(factor(name, i, n));
      near(at('A/P').minus(at('A/F')), i);
      near(at('F/P').times(at('P/F')), d(1));
      near(at('F/A').times(at('A/F')), d(1));
      near(at('P/A').times(at('A/P')), d(1));
      near(at('F/A'), at('P/A').times(at('F/P')));
      near(at('A/G'), at('P/G').times(at('A/P')));
    }), runs(8201, 80));
  });

  it('from first principles: an account kept period by period, and sums of P/F', PATIENT, () => {
    fc.assert(fc.property(rate, fc.integer({ min: 1, max: 40 }), (i, n) => {
      const payment = got(factor('A/P', i, n)).times(1000);
      let debt = d(1000);
      let saved = d(0);
      let worth = d(0);
      let growing = d(0);
      let discount = d(1);
      for (let k = 1; k <= n; k++) {
        debt = debt.times(i.plus(1)).minus(payment);
        saved = saved.times(i.plus(1)).plus(1);
        discount = discount.div(i.plus(1));
        worth = worth.plus(discount);
        growing = growing.plus(discount.times(k - 1));
      }
      expect(debt.abs().lt('1e-30')).toBe(true);
      near(got(factor('F/A', i, n)), saved);
      near(got(factor('P/A', i, n)), worth);
      near(got(factor('P/G', i, n)), growing);
    }), runs(8202, 40));
  });

  it('between whole periods: two and a half years are five halves (computed)', () => {
    expect(f('F/P', '0.21', 2.5).toFixed(30)).toBe(f('F/P', '0.1', 5).toFixed(30));
    expect(f('F/P', '0.21', 0.5).toFixed(30)).toBe(d('1.1').toFixed(30));
    const [before, at, after] = [f('A/P', '0.1', 4.999), f('A/P', '0.1', 5), f('A/P', '0.1', 5.001)];
    expect(before.gt(at) && at.gt(after)).toBe(true);
  });
});

describe('equal amount per period', () => {
  const per = (now: number, periodic: number, atEnd: number, rate: string, periods: number): PerPeriod => got(equivalentPerPeriod({ now: d(now), periodic: d(periodic), atEnd: d(atEnd), rate: d(rate), periods }));

  it('White et al., Principles of Engineering Economic Analysis, Ex. 11.10 (read): −428.6356 a year, −428.56 with table factors: replace', () => {
    const found = per(27_000, -7000, -10_000, '0.15', 5);
    expect(found.amount.toFixed(4)).toBe('-428.6356');
    expect(27_000 * 0.29832 - 10_000 * 0.14832 - 7000).toBeCloseTo(-428.56, 9);
    expect(found.amount.lt(0)).toBe(true);
  });

  it('without interest: what is lost, spread evenly (computed)', () => {
    const found = per(4800, 20, -1200, '0', 36);
    expect([found.ofNow, found.ofEnd, found.amount].map((one) => one.toFixed(4))).toEqual(['133.3333', '-33.3333', '120.0000']);
  });

  it('is worth the same as what it stands for (computed: its present worth, summed period by period)', () => {
    const { amount } = per(5200, 45, -900, '0.0075', 48);
    let [stream, equal, discount] = [d(5200), d(0), d(1)];
    for (let k = 1; k <= 48; k++) {
      discount = discount.div('1.0075');
      stream = stream.plus(discount.times(45));
      equal = equal.plus(discount.times(amount));
    }
    stream = stream.minus(discount.times(900));
    expect(equal.toFixed(30)).toBe(stream.toFixed(30));
  });
});

describe('a month’s rate', () => {
  it('of a nominal 12 %: 1 %, which is 12.6825 % effective (standard textbook value, from memory, recomputed)', () => {
    expect(got(monthlyOfNominal(d('0.12'))).toFixed()).toBe('0.01');
    expect(f('F/P', '0.01', 12).minus(1).toFixed(6)).toBe('0.126825');
  });

  it('of nothing: nothing; of a loss: a twelfth of it', () => {
    expect([d(0), d('-0.6')].map((yearly) => got(monthlyOfNominal(yearly)).toNumber())).toEqual([0, -0.05]);
  });
});

describe('what can not be reckoned comes back as a problem', () => {
  it.each([['NaN'], ['Infinity'], ['-Infinity'], ['-1'], ['-1.5']])('a rate of %s', (rate) => {
    const refused = { kind: 'refused', problem: { kind: 'rate out of range', rate: d(rate) } };
    expect(factor('P/F', d(rate), 5)).toEqual(refused);
    expect(equivalentPerPeriod({ now: d(1), periodic: d(1), atEnd: d(1), rate: d(rate), periods: 5 })).toEqual(refused);
  });

  it.each([[0], [-1], [NaN], [Infinity], [1_000_001]])('%s periods', (periods) => {
    for (const name of ['P/F', 'A/P', 'A/G'] as const) expect(factor(name, d('0.1'), periods)).toEqual({ kind: 'refused', problem: { kind: 'periods out of range', periods } });
  });

  it('a growth over 2.5 periods, an amount that is not finite, a nominal rate of −1200 %', () => {
    for (const name of ['P/G', 'A/G'] as const) expect(factor(name, d('0.1'), 2.5)).toEqual({ kind: 'refused', problem: { kind: 'periods out of range', periods: 2.5 } });
    expect(equivalentPerPeriod({ now: d(1), periodic: d(NaN), atEnd: d(1), rate: d('0.1'), periods: 5 })).toEqual({ kind: 'refused', problem: { kind: 'amount not finite', amount: d(NaN) } });
    expect(monthlyOfNominal(d(-12))).toEqual({ kind: 'refused', problem: { kind: 'rate out of range', rate: d(-12) } });
  });

  it('the most periods are still finite', () => {
    expect(f('A/P', '0.3', 1_000_000).toFixed(10)).toBe('0.3000000000');
    expect(f('P/F', '0.3', 1_000_000).isFinite()).toBe(true);
  });
});
