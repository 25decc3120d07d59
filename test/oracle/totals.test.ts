import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recordJson } from '../../src/vocabulary/index.js';
import type { Points, Weighed } from '../../src/weigh/index.js';
import { randomEstimate } from '../support/random-estimate.js';
import { runs } from '../support/random-runs.js';
import { readSample, readSound, sampleFiles, type Read } from '../weigh/weighed.js';
import { oracleTotals, type OracleOption, type OraclePlan } from './totals.js';

/** Money of the product as the digits it is written with, in the smallest coin. */
const coins = (points: Points, digits: number) => [points.low, points.likely, points.high].map((value) => BigInt(value.toFixed(digits).replace('.', '')));

const namesOf = (plan: { readonly paid: readonly { readonly name: string }[] }) => plan.paid.map((way) => way.name).sort();

function expectSame(tool: Weighed, own: OracleOption): void {
  expect(tool.planned.unreachable.length === 0).toBe(own.reached);
  if (!own.reached) return;
  const { chosen, stand, unpinned } = tool.planned;
  const plan = own.best.find((one) => JSON.stringify([...one.ways].sort()) === JSON.stringify(namesOf(chosen)));
  expect(namesOf(chosen), `ways in of ${own.name}`).toEqual(plan === undefined ? own.best.map((one) => one.ways) : [...plan.ways].sort());
  const { totals } = chosen;
  const { total, tax, access, hours } = plan as OraclePlan;
  expect(coins(totals.total, own.digits), `total of ${own.name}`).toEqual(total);
  expect(coins(totals.tax, own.digits), `tax of ${own.name}`).toEqual(tax);
  expect(coins(totals.access, own.digits), `access of ${own.name}`).toEqual(access);
  expect(Math.abs(totals.hours.likely.toNumber() - Number(hours.n * 1_000_000n / hours.d) / 1_000_000)).toBeLessThan(2e-6);
  expect(coins(stand.totals.total, own.digits), `${own.name} on a stand`).toEqual(own.stand.total);
  expect(unpinned === undefined ? [] : [coins(unpinned.totals.total, own.digits)[1]]).toEqual(own.free.slice(0, 1).map((one) => one.total[1]));
}

function expectSameTotals({ resolved, comparison }: Read): void {
  const own = oracleTotals(resolved.records.map(recordJson));
  expect(comparison.options.map((one) => one.option.name)).toEqual(own.map((one) => one.name));
  own.forEach((option, i) => expectSame(comparison.options[i] as Weighed, option));
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

  it('random estimates: ways in, low, likely and high, tax, access, hours, the stand and the plan without a pin', () => {
    fc.assert(fc.property(randomEstimate, (text) => expectSameTotals(readSound(text))), runs(20_140_115, 300));
  });
});
