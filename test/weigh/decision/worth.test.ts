import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recordJson } from '../../../src/vocabulary/index.js';
import { decide, type Comparison, type Line, type Margin, type Weighed } from '../../../src/weigh/index.js';
import { fromDigits, rounded, times, whole, type Rational } from '../../oracle/rational.js';
import { randomEstimate } from '../../support/random-estimate.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { decideText, oneFile, sampleWithShop, weighFresh } from './weighing.js';

describe('cost in each month', () => {
  const monthly = (header: string, option: string, vehicle = '') => decideText(`steelyard 1\nestimate "E"\n${header}shop "S"\n${vehicle}option one "One"\n${option}`).of('one').monthly;

  it('White et al., Principles of Engineering Economic Analysis, Ex. 11.10 (read): 27 000 now, 10 000 at the end of 5 periods at 15 %, which 7000 saved in each beats by 428.64', () => {
    // A twelfth of 180 % a year is 15 % a month, and months stand for the years.
    const found = monthly('  interest 180%\n', '  part "P" 27000.00 new\n  lasts 5 mo\n  resale 10000.00\n');
    expect(found?.perMonth.likely.toFixed(2)).toBe('6571.36');
    // Exact −428.6356, and −428.56 with the table's factors .29832 and .14832.
    expect(Number(found?.perMonth.likely) - 7000).toBeCloseTo(-428.64, 9);
    expect(Math.abs(27_000 * 0.29832 - 10_000 * 0.14832 - Number(found?.perMonth.likely))).toBeLessThan(0.1);
  });

  it.each([
    { percent: 15, yearly: 180, recovery: 0.29832, sinking: 0.14832, source: 'White et al. (read)' },
    { percent: 10, yearly: 120, recovery: 0.2638, sinking: 0.1638, source: 'formulas of the NCEES FE Reference Handbook (computed)' },
  ])('$percent % for a period, 5 periods: A/P $recovery and A/F $sinking, $source', ({ yearly, recovery, sinking }) => {
    const a = monthly(`  interest ${yearly}%\n`, '  part "P" 100000.00 new\n  lasts 5 mo\n');
    expect(Number(a?.perMonth.likely) / 100_000).toBeCloseTo(recovery, 5);
    const b = monthly(`  interest ${yearly}%\n`, '  part "P" 100000.00 new\n  lasts 5 mo\n  resale 100000.00\n');
    // What comes back in full at the end leaves the interest of each period.
    expect(Number(b?.perMonth.likely) / 100_000).toBeCloseTo(recovery - sinking, 5);
  });

  it('what it brings as it stands is put in too, and stays comparable: without interest by hand', () => {
    const found = monthly('', '  part "P" 3000.00 new\n  lasts 36 mo\n  resale 1200.00\n', 'vehicle "V"\n  unrepaired 1800.00\n');
    expect([found?.now.likely.toFixed(2), found?.perMonth.likely.toFixed(2)]).toEqual(['4800.00', '100.00']);
  });

  it('what an option gives up in worth, and chances, are not in it', () => {
    const found = monthly('', '  part "P" 3600.00 new\n  lasts 36 mo\n  worth 100.00\n  chance "C" 50%\n    part "X" 900.00 new\noption two "Two"\n  worth 9000.00\n');
    expect(found?.perMonth.likely.toFixed(2)).toBe('100.00');
  });

  it('is not said where nothing is said of service, or not a month of it', () => {
    expect(monthly('', '  part "P" 1.00 new\n')).toBeUndefined();
    const short = weighFresh(oneFile('steelyard 1\nshop "S"\noption one "One"\n  part "P" 1.00 new\n  lasts 3 wk\n'));
    expect([short.problems.map(({ code }) => code), decide(short.comparison).options[0]?.monthly]).toEqual([['service-of-nothing'], undefined]);
    expect(monthly('', '  part "P" 1.00 new\n  lasts 52 wk\n')?.months.toFixed(4)).toBe('11.9592');
  });

  it('days without it: every day by the calendar, weekends too (computed)', () => {
    const { of } = decideText('steelyard 1\nestimate "E"\n  start 2026-12-03\nshop "S"\n  workday 8 h\n  rate bench 1.00\nvehicle "V"\n  downtime 42.00\noption one "One"\n  labour "W" 24 h\n');
    // Thursday, Friday, Monday: five days by the calendar.
    expect(of('one').downtime?.likely.toFixed(2)).toBe('210.00');
  });
});

// Margin -------------------------------------------------------------------------

type Json = { readonly [key: string]: unknown };
const json = (line: Line) => recordJson(line.record);
const written = (value: unknown) => fromDigits((value as { readonly likely: string }).likely);

/** What a line costs the shop, in coins, from its record alone; undefined where nobody wrote it. */
function costOf(line: Line, { estimate, money }: Comparison): bigint | undefined {
  const coins = (value: Rational) => rounded(value, money.currency.digits, estimate.shop.rounding);
  const record = json(line);
  if (line.kind !== 'labour') {
    if (record['cost'] === undefined) return undefined;
    return coins(times(record['quantity'] === undefined ? whole(1n) : written(record['quantity']), written(record['cost'])));
  }
  const rates = recordJson(estimate.shop.source?.record ?? line.record);
  const all = (rates['rate'] ?? []) as readonly Json[];
  const wanted = record['class'] as string | undefined;
  const rate = wanted === undefined ? (all.find((one) => one['usual'] !== undefined) ?? all[0]) : all.find((one) => one['name'] === wanted);
  if (rate?.['cost'] === undefined || line.hours === undefined) return undefined;
  return coins(times(fromDigits(line.hours.likely.toFixed()), written(rate['cost'])));
}

function expectMargin(margin: Margin, { totals }: Weighed, comparison: Comparison): number {
  const digits = comparison.money.currency.digits;
  const coinsOf = (value: { toFixed(digits: number): string }) => BigInt(value.toFixed(digits).replace('.', ''));
  let lines = 0;
  let whole = 0n;
  for (const { sort, sold, cost, margin: left, unknown } of margin.by) {
    const own = totals.lines.filter(({ kind }) => kind === ({ labour: 'labour', parts: 'part', outside: 'sublet' } as const)[sort]);
    const known = own.flatMap((line) => {
      const its = costOf(line, comparison);
      return its === undefined ? [] : [{ line, its }];
    });
    lines += own.length;
    const sum = known.reduce((total, { its }) => total + its, 0n);
    const price = known.reduce((total, { line }) => total + coinsOf(line.amount.likely), 0n);
    expect([coinsOf(sold.likely), coinsOf(cost.likely), coinsOf(left.likely)]).toEqual([price, sum, price - sum]);
    expect(unknown.length).toBe(own.filter((line) => !line.amount.likely.isZero()).length - known.filter(({ line }) => !line.amount.likely.isZero()).length);
    whole += price - sum;
  }
  expect(coinsOf(margin.margin.likely)).toBe(whole);
  return lines;
}

describe('margin', () => {
  it.each(['pilgrim-v6.yard', 'heron-pump.yard', 'kestrel-flat.yard', 'tarn-inline.yard'])('sample %s: prices less costs from the records, in whole coins', (file) => {
    const { comparison } = weighFresh(sampleWithShop(file));
    const lines = decide(comparison).options.map(({ margin, weighed }) => expectMargin(margin, weighed, comparison));
    expect(Math.max(...lines)).toBeGreaterThan(5);
  });

  it('100 random estimates', PATIENT, () => {
    let lines = 0;
    fc.assert(fc.property(randomEstimate, (text) => {
      const { comparison } = weighFresh(oneFile(text));
      for (const { margin, weighed } of decide(comparison).options) lines += expectMargin(margin, weighed, comparison);
    }), runs(9501, 100));
    expect(lines).toBeGreaterThan(300);
  });

  it('an hour and a day in the bay (computed)', () => {
    // 10 h at 100.00 cost 55.00 each, one part at 40.00 that cost 25.00 and one at 10.00 of unknown cost; two days in the bay.
    const { margin } = decideText('steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00 cost 55.00\n  markup 60%\noption one "One"\n  labour "W" 600 min\n  part "P" cost 25.00 new\n  part "Q" 10.00 new\n').of('one');
    expect(margin.margin.likely.toFixed(2)).toBe('465.00');
    expect([margin.perHour?.toFixed(2), margin.perBayDay?.toFixed(2)]).toEqual(['46.50', '232.50']);
    expect(margin.by.flatMap(({ unknown }) => unknown.map(({ title }) => title))).toEqual(['Q']);
  });

  it('by the hour or the day nothing is told where some hours cost the shop nobody knows what', () => {
    const head = 'steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00 cost 55.00 usual\n  rate diag 120.00\n';
    const of = (line: string) => decideText(`${head}option one "One"\n  labour "W" 10 h\n${line}`).of('one').margin;
    const some = of('  labour "D" 1 h class diag\n');
    expect([some.margin.likely.toFixed(2), some.perHour, some.perBayDay]).toEqual(['450.00', undefined, undefined]);
    expect(of('  part "Q" 10.00 new\n').perHour?.toFixed(2)).toBe('45.00');
  });

  it('nothing to divide by: no hours, no day in the bay', () => {
    const { margin } = decideText('steelyard 1\nshop "S"\noption one "One"\n  part "P" cost 25.00 new\n').of('one');
    expect([margin.perHour, margin.perBayDay]).toEqual([undefined, undefined]);
  });
});

describe('coverage through the text', () => {
  interface Case { readonly vehicle: string; readonly coverage: string; readonly header?: string; readonly answer: 'covered' | 'not covered' | 'unknown' }
  const dated = 'estimate "E"\n  start 2026-11-30\n';

  it.each<Case>([
    { vehicle: '  built 2012-11\n', coverage: '  built from 2012-06\n  built to 2013-02\n', answer: 'covered' },
    { vehicle: '  built 2012-05-31\n', coverage: '  built from 2012-06\n', answer: 'not covered' },
    { vehicle: '  built 2012-06\n', coverage: '  built from 2012-06-15\n', answer: 'unknown' },
    { vehicle: '', coverage: '  built from 2012-06\n', answer: 'unknown' },
    // 120 000 mi are 193 121.28 km (NIST SP 811: a mile is 1.609344 km, exactly).
    { vehicle: '  odometer 193121 km\n', coverage: '  up to 120000 mi\n', answer: 'covered' },
    { vehicle: '  odometer 193122 km\n', coverage: '  up to 120000 mi\n', answer: 'not covered' },
    // The check-digit example says 1989 by its tenth place (49 CFR 565.15, table of years).
    { vehicle: '  vin 1M8GDM9AXKP042788\n', coverage: '  years 1989, 1990\n', answer: 'covered' },
    { vehicle: '  vin 1M8GDM9AXKP042788\n  model year 2013\n', coverage: '  years 1989, 1990\n', answer: 'not covered' },
    { vehicle: '', coverage: '  until 2026-11-30\n', header: dated, answer: 'covered' },
    { vehicle: '', coverage: '  until 2026-11-29\n', header: dated, answer: 'not covered' },
    { vehicle: '', coverage: '  until 2026-11-29\n', answer: 'unknown' },
    { vehicle: '  built 2016-11-30\n', coverage: '  within 120 mo\n', header: dated, answer: 'covered' },
    { vehicle: '  built 2016-11-29\n', coverage: '  within 120 mo\n', header: dated, answer: 'not covered' },
    { vehicle: '  built 2012-11\n  odometer 131400 mi\n', coverage: '  built from 2012-06\n  up to 120000 mi\n', answer: 'not covered' },
  ])('$vehicle$coverage$header: $answer', ({ vehicle, coverage, header = '', answer }) => {
    const { coverages } = decideText(`steelyard 1\n${header}shop "S"\nvehicle "V"\n${vehicle}coverage "C" recall\n${coverage}`);
    expect(coverages.map((one) => one.answer)).toEqual([answer]);
  });

  it('names the options that do what it covers', () => {
    const { coverages } = decideText('steelyard 1\nshop "S"\n  rate bench 1.00\nlabour head "Head" 1 h\nlabour all "All" 1 h\n  needs head\noption one "One"\n  do all\noption two "Two"\n  labour "W" 1 h\noption three "Three"\n  labour "W" 1 h\ncoverage "C" recall\n  years 2012\n  covers head, three\n');
    expect(coverages[0]?.options).toEqual(['one', 'three']);
  });
});
