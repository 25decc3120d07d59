import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recordJson } from '../../src/vocabulary/index.js';
import type { Points, Weighed } from '../../src/weigh/index.js';
import { oracle, type Coins, type OracleOption } from '../oracle/totals.js';
import { randomStaged } from '../support/random-stage.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { readSample, readSound, type Read } from '../weigh/weighed.js';

// test/oracle/totals.ts shares no code with the product; it tries every set of ways in.

const coins = (points: Points, digits: number) => [points.low, points.likely, points.high].map((value) => value.toFixed(digits).replace('.', '').replace(/^(-?)0+(?=\d)/, '$1'));
const digitsOf = (own: Coins) => own.map(String);
const names = (list: readonly string[]) => [...list].sort().join(', ');

function told({ option, planned: { chosen, stand, unpinned }, totals }: Weighed, digits: number) {
  return {
    option: option.name, ways: names(chosen.paid.map((way) => way.name)),
    total: coins(totals.total, digits), tax: coins(totals.tax, digits), access: coins(totals.access, digits), stand: coins(stand.totals.total, digits),
    free: unpinned === undefined ? undefined : coins(unpinned.totals.total, digits)[1],
  };
}

/** Where plans tie in money, hours and number of ways, the one that the product took. */
function workedOut(own: OracleOption, tool: Weighed) {
  const taken = names(tool.planned.chosen.paid.map((way) => way.name));
  const plan = own.best.find((one) => names(one.ways) === taken) ?? own.best[0];
  if (plan === undefined) throw new Error(`${own.name} can't be reached`);
  return {
    option: own.name, ways: names(plan.ways),
    total: digitsOf(plan.total), tax: digitsOf(plan.tax), access: digitsOf(plan.access), stand: digitsOf(own.stand.total),
    free: own.free[0] === undefined ? undefined : String(own.free[0].total[1]),
  };
}

function expectSame({ resolved, comparison }: Read): Read {
  const { options, stages } = oracle(resolved.records.map(recordJson));
  const digits = comparison.money.currency.digits;
  expect(comparison.options.map((one) => told(one, digits))).toEqual(options.map((one, i) => workedOut(one, comparison.options[i] as Weighed)));
  expect(comparison.stages.map(({ stage, totals, stop, complete }) => ({ name: stage.name, complete, total: coins(totals.total, digits), stop: coins(stop, digits) })))
    .toEqual(stages.map(({ name, total, stop }) => ({ name, complete: true, total: digitsOf(total), stop: digitsOf(stop) })));
  return { resolved, comparison } as Read;
}

describe('an estimate with stages equals an independent recomputation', () => {
  it('sample osprey-tear-down.yard', () => void expectSame(readSample('osprey-tear-down.yard')));

  it('random estimates: options with the stages in them, each stage alone and put back, low, likely and high (130 cases)', PATIENT, () => {
    const seen = { options: 0, stages: 0, more: 0, pinned: 0, leftOpen: 0 };
    fc.assert(fc.property(randomStaged, (text) => {
      const { comparison } = expectSame(readSound(text));
      seen.stages += comparison.stages.length;
      for (const { option, planned } of comparison.options) {
        seen.options++;
        if (planned.chosen.paid.length > (option.staged?.ways.length ?? 0)) seen.more++;
        if (option.way !== undefined) seen.pinned++;
        if (option.staged?.then === 'left open' && option.staged.ways.length > 0) seen.leftOpen++;
      }
    }), runs(160_333, 130));
    // The cases are worth their name.
    expect(seen.options).toBeGreaterThan(200);
    expect(seen.stages).toBeGreaterThan(140);
    expect(seen.pinned).toBeGreaterThan(15);
    expect(seen.more).toBeGreaterThan(10);
    expect(seen.leftOpen).toBeGreaterThan(4);
  });
});
