import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Decimal } from '../../src/vocabulary/index.js';
import { before, cheapestWays, type RankedPlan } from '../../src/weigh/index.js';
import { cheapestFirst } from '../../src/weigh/ways.js';
import { PATIENT, runs } from '../support/random-runs.js';

/** Ways in, some of them paid for in every plan. Small prices, so that ties are common. */
interface Case {
  readonly gives: readonly number[];
  readonly prices: readonly number[];
  readonly jobs: readonly (readonly { readonly takes: number; readonly price: number; readonly hours: number }[])[];
  readonly always: number;
  /** By the hundred, capped: what a plan comes to is above the sum of its prices. */
  readonly fee: number;
}

const WAYS = 5;

const cases: fc.Arbitrary<Case> = fc.integer({ min: 1, max: WAYS }).chain((count) => {
  const set = fc.integer({ min: 0, max: (1 << count) - 1 });
  const mode = fc.record({ takes: set, price: fc.integer({ min: 0, max: 6 }), hours: fc.integer({ min: 0, max: 3 }) });
  return fc.record({
    gives: fc.array(set, { minLength: count, maxLength: count }).map((more) => more.map((bits, i) => bits | (1 << i))),
    prices: fc.array(fc.integer({ min: 0, max: 5 }), { minLength: count, maxLength: count }),
    jobs: fc.array(fc.array(mode, { minLength: 1, maxLength: 4 }), { maxLength: 4 }),
    always: set, fee: fc.constantFrom(0, 20, 50),
  });
});

const ways = (set: number) => Array.from({ length: WAYS }, (_, i) => i).filter((i) => (set & (1 << i)) !== 0);

/** How each job is done with a set of ways paid for; undefined where one can't be. */
function doneWith({ gives, jobs }: Case, paid: number) {
  const open = ways(paid).reduce((bits, i) => bits | (gives[i] ?? 0), 0);
  const best = jobs.map((modes) => modes.filter(({ takes }) => (takes & ~open) === 0).sort((a, b) => a.price - b.price || a.hours - b.hours)[0]);
  return best.every((mode) => mode !== undefined) ? best : undefined;
}

function priced(one: Case, paid: number): RankedPlan | undefined {
  const done = doneWith(one, paid);
  if (done === undefined) return undefined;
  const money = done.reduce((sum, { price }) => sum + price, 0) + ways(paid).reduce((sum, i) => sum + (one.prices[i] ?? 0), 0);
  return { ways: paid, money: new Decimal(money).plus(Math.min(4, Math.round((money * one.fee) / 100))), hours: new Decimal(done.reduce((sum, { hours }) => sum + hours, 0)) };
}

/** Every set that holds what is always paid for, and of the rest only ways that make some job cheaper or quicker. */
function byBruteForce(one: Case): RankedPlan[] {
  const plans: RankedPlan[] = [];
  for (let paid = 0; paid < 1 << one.prices.length; paid++) {
    if ((paid & one.always) !== one.always) continue;
    const plan = priced(one, paid);
    const now = doneWith(one, paid);
    const helps = (i: number) => {
      const without = doneWith(one, paid & ~(1 << i));
      return without === undefined || without.some((mode, job) => mode.price !== now?.[job]?.price || mode.hours !== now[job]?.hours);
    };
    if (plan !== undefined && ways(paid & ~one.always).every(helps)) plans.push(plan);
  }
  return plans.sort((a, b) => (before(a, b) ? -1 : 1));
}

const shown = (plans: readonly RankedPlan[]) => plans.map((plan) => `${plan.ways.toString(2)} at ${plan.money.toFixed()} in ${plan.hours.toFixed()}`);

describe('cheapest ways in beside those that every plan pays for', () => {
  it('the same plans in the same order as every set of ways tried (2000 cases)', PATIENT, () => {
    let beside = 0;
    fc.assert(fc.property(cases, fc.integer({ min: 1, max: 4 }), (one, most) => {
      const all = byBruteForce(one);
      if (all[0] !== undefined && one.always !== 0 && all[0].ways !== one.always) beside++;
      const found = cheapestWays<RankedPlan>({
        gives: one.gives,
        prices: one.prices.map((price) => new Decimal(price)),
        jobs: one.jobs.map((modes) => cheapestFirst(modes.map(({ takes, price, hours }) => ({ takes, price: new Decimal(price), hours: new Decimal(hours) })))),
        base: new Decimal(0), always: one.always,
        plan: (paid) => priced(one, paid) as RankedPlan,
      }, most);
      expect(shown(found)).toEqual(shown(all.slice(0, most)));
    }), runs(3353, 2000));
    expect(beside).toBeGreaterThan(100);
  });
});
