import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { supplementOf } from '../../src/report/quote/index.js';
import { changed, sideOf } from '../changes/both.js';
import { edited } from '../changes/random-edits.js';
import { Draw } from '../support/random-draw.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';
import { comesBack, givenUp, NO_DAYS } from './after.js';
import { compare, fromDigits, minus, nothing, per, plus, whole, type Rational } from './rational.js';
import { readText } from './reader.js';
import { oracle } from './totals.js';

const draws = fc.noBias(fc.array(fc.nat({ max: 65_535 }), { minLength: 5, maxLength: 60 })).map((numbers) => new Draw(numbers));

interface Costs {
  readonly total: Rational;
  /** The cost in all where it is ready on that day. */
  readonly inAll: (ready: string | undefined) => Rational;
}

/** What each option comes to; empty where the text can't be read as a whole. */
function costsOf(text: string): ReadonlyMap<string, Costs> {
  const own = oracle(readText(text));
  const exact = (coins: bigint) => per(whole(coins), 10n ** BigInt(own.prices.digits));
  return new Map(own.options.flatMap((option) => {
    const [plan] = option.best;
    if (plan === undefined) return [];
    const inAll = (ready: string | undefined) => plus(exact(plan.total[1] - comesBack(own, option, plan, { ...NO_DAYS, ready })[1]), givenUp(own, option)?.[1] ?? nothing);
    return [[option.name, { total: exact(plan.total[1]), inAll }] as const];
  }));
}

const same = (a: Rational, b: Rational) => compare(a, b) === 0;
const sum = (all: readonly Rational[]) => all.reduce(plus, nothing);

describe('two versions', () => {
  it('what the changes do adds up to the difference of the totals that are worked out here', PATIENT, () => {
    const seen = { options: 0, moved: 0 };
    fc.assert(fc.property(randomEstimate, draws, (before, draw) => {
      const after = edited(before, draw);
      const found = changed(before, after);
      if (!found.comparable) return;
      const [one, other] = [costsOf(before), costsOf(after)];
      found.options.forEach((pair, i) => {
        if (pair.before?.complete !== true || pair.after?.complete !== true) return;
        const [was, is] = [one.get(pair.before.name), other.get(pair.after.name)];
        if (was === undefined || is === undefined) throw new Error(`${pair.before.name} can't be worked out`);
        const effects = [...found.changes, ...found.follows].map(({ effects: all }) => all[i]);
        const total = minus(is.total, was.total);
        const inAll = minus(is.inAll(pair.after.ready), was.inAll(pair.before.ready));
        expect([same(sum(effects.map((effect) => fromDigits(effect?.total.toFixed() ?? ''))), total), same(sum(effects.map((effect) => fromDigits(effect?.inAll.toFixed() ?? ''))), inAll)], `${pair.before.name}: ${before}\n${after}`).toEqual([true, true]);
        seen.options++;
        if (total.n !== 0n) seen.moved++;
      });
    }), runs(88_101, 120));
    expect(seen.options).toBeGreaterThan(60);
    expect(seen.moved).toBeGreaterThan(25);
  });

  it('what is new on a supplement adds up to the difference of the totals that are worked out here', PATIENT, () => {
    const seen = { papers: 0, moved: 0 };
    fc.assert(fc.property(randomEstimate, draws, (before, draw) => {
      const after = edited(before, draw);
      const [one, other] = [costsOf(before), costsOf(after)];
      for (const [name, was] of one) {
        const is = other.get(name);
        const now = sideOf(`${after}authorised 500 for ${name} on 2027-11-25\n`, 'now');
        const then = sideOf(before, 'then');
        const version = ({ service, uri }: typeof now) => ({ records: service.weighing(uri).resolved.records, comparison: service.weighing(uri).comparison });
        const made = supplementOf(now.service.decision(now.uri), name, { before: version(then), records: version(now).records });
        if (is === undefined || made.kind !== 'supplement' || made.supplement.news.kind !== 'listed') continue;
        const { total, news } = made.supplement;
        seen.papers++;
        const rows = [...news.lines, ...news.taxes].map(({ more }) => fromDigits(more));
        const difference = minus(is.total, was.total);
        expect([same(fromDigits(total), is.total), same(fromDigits(news.total), was.total), same(sum(rows), difference)], `${name}: ${before}\n${after}`).toEqual([true, true, true]);
        if (difference.n !== 0n) seen.moved++;
      }
    }), runs(88_102, 70));
    expect(seen.papers).toBeGreaterThan(40);
    expect(seen.moved).toBeGreaterThan(12);
  });
});
