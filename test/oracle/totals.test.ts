import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recordJson } from '../../src/vocabulary/index.js';
import type { Points, Weighed } from '../../src/weigh/index.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { readSample, readSound, sampleFiles, type Read } from '../weigh/weighed.js';
import { oracleTotals, type Coins, type OracleOption, type OraclePlan } from './totals.js';

/** Money of the product as the digits it is written with, in the smallest coin. */
const coins = (points: Points, digits: number) => [points.low, points.likely, points.high].map((value) => value.toFixed(digits).replace('.', '').replace(/^0+(?=\d)/, ''));
const digitsOf = (own: Coins) => own.map(String);
const ways = (names: readonly string[]) => [...names].sort().join(', ');

/** Hours in millionths, cut: minutes make fractions without end. */
const millionths = (hours: OraclePlan['hours']) => Number((hours.n * 1_000_000n) / hours.d);

/** Thirds of an hour are cut after some sixty digits, so that three of them may be a hair less than the whole. */
const HAIR = '1e-40';

/** What the product says of one option, one figure after the other. */
function told({ option, planned: { chosen, stand, unpinned, unreachable } }: Weighed, digits: number): unknown {
  if (unreachable.length > 0) return { option: option.name, unreachable: true };
  const { totals } = chosen;
  return {
    option: option.name,
    ways: ways(chosen.paid.map((way) => way.name)),
    total: coins(totals.total, digits), tax: coins(totals.tax, digits), access: coins(totals.access, digits),
    hours: totals.hours.likely.times(1_000_000).plus(HAIR).floor().toNumber(),
    stand: coins(stand.totals.total, digits),
    free: unpinned === undefined ? undefined : coins(unpinned.totals.total, digits)[1],
  };
}

/** The same, worked out here. Where plans tie in money, hours and number of ways, the one the product took. */
function workedOut(own: OracleOption, tool: Weighed): unknown {
  const [first] = own.best;
  if (first === undefined) return { option: own.name, unreachable: true };
  const taken = ways(tool.planned.chosen.paid.map((way) => way.name));
  const plan = own.best.find((one) => ways(one.ways) === taken) ?? first;
  return {
    option: own.name,
    ways: ways(plan.ways),
    total: digitsOf(plan.total), tax: digitsOf(plan.tax), access: digitsOf(plan.access),
    hours: millionths(plan.hours),
    stand: digitsOf(own.stand.total),
    free: own.free[0] === undefined ? undefined : String(own.free[0].total[1]),
  };
}

function expectSameTotals({ resolved, comparison }: Read): void {
  const own = oracleTotals(resolved.records.map(recordJson));
  const digits = own[0]?.digits ?? 2;
  expect(comparison.options.map((one) => told(one, digits))).toEqual(own.map((one, i) => workedOut(one, comparison.options[i] as Weighed)));
}

describe('quoted totals equal an independent recomputation', () => {
  it('shares no code with the product', () => {
    for (const file of ['totals.ts', 'rational.ts']) {
      const text = readFileSync(path.join(import.meta.dirname, file), 'utf8');
      const imports = [...text.matchAll(/\b(?:from|import|require)\s*\(?\s*['"]([^'"]+)['"]/g)].map((found) => found[1]);
      expect(imports).toEqual(file === 'totals.ts' ? ['./rational.js'] : []);
    }
  });

  it.each(sampleFiles)('sample %s', (file) => {
    expectSameTotals(readSample(file));
  });

  it('random estimates: ways in, low, likely and high, tax, access, hours, the stand and the plan without a pin', PATIENT, () => {
    fc.assert(fc.property(randomEstimate, (text) => expectSameTotals(readSound(text))), runs(20_140_115, 250));
  });
});
