import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PATIENT, runs } from '../support/random-runs.js';
import { closeEstimate } from '../weigh/decision/random-close.js';
import { comesBack, givenUp, NO_DAYS } from './after.js';
import { readText, type Json, type Written } from './reader.js';
import { fromDigits, per, plus, minus, compare, whole } from './rational.js';
import { told, texts } from './told.js';
import { oracle } from './totals.js';

/** The cheapest option in all; of equals the first in the file. */
function pick(records: readonly Json[]): string | undefined {
  const own = oracle(records);
  const costs = own.options.flatMap((option) => {
    const [plan] = option.best;
    if (plan === undefined || option.ruledOut.length > 0) return [];
    const net = per(whole(plan.total[1] - comesBack(own, option, plan, NO_DAYS)[1]), 10n ** BigInt(own.prices.digits));
    return [{ name: option.name, cost: plus(net, givenUp(own, option)?.[1] ?? whole(0n)) }];
  });
  return costs.reduce<(typeof costs)[number] | undefined>((best, one) => (best === undefined || compare(minus(one.cost, best.cost), whole(0n)) < 0 ? one : best), undefined)?.name;
}

/** Every figure of some records, with the records in which it has another value. */
function figures(records: readonly Json[]): { readonly written: Written; readonly at: (value: string) => Json[] }[] {
  const found: { readonly written: Written; readonly path: readonly (string | number)[] }[] = [];
  const visit = (value: unknown, path: readonly (string | number)[]) => {
    if (typeof value !== 'object' || value === null) return;
    if ('likely' in value) found.push({ written: value as Written, path });
    else for (const [key, one] of Object.entries(value)) visit(one, [...path, key]);
  };
  visit(records, []);
  return found.map(({ written, path }) => ({
    written,
    at: (value) => {
      const copy = structuredClone(records) as Json[];
      let holder: { [key: string]: unknown } = copy as unknown as { [key: string]: unknown };
      for (const key of path.slice(0, -1)) holder = holder[key] as { [key: string]: unknown };
      holder[path.at(-1) as string] = { ...written, low: value, likely: value, high: value };
      return copy;
    },
  }));
}

/** Shares of the way to nothing, and multiples up to the farthest that is searched. */
const BELOW = [0.995, 0.985, 0.97, 0.95, 0.92, 0.88, 0.83, 0.77, 0.7, 0.62, 0.53, 0.45, 0.37, 0.3, 0.22, 0.15, 0.08, 0.03, 0];
const ABOVE = [1.005, 1.015, 1.03, 1.05, 1.08, 1.12, 1.17, 1.24, 1.33, 1.45, 1.6, 1.8, 2.1, 2.5, 3, 3.7, 4.6, 6, 8, 11, 15, 19];

describe('flip points', () => {
  it('a dense scan of every figure, each value worked out here, finds none nearer than those that are told', PATIENT, () => {
    const seen = { values: 0, turned: 0 };
    fc.assert(fc.property(closeEstimate, (text) => {
      const records = readText(text);
      const { flips } = told(texts(text));
      const today = pick(records);
      for (const { written, at } of figures(records)) {
        const value = Number(written.likely);
        for (const [way, shares] of [['below', BELOW], ['above', ABOVE]] as const) {
          for (const share of shares) {
            const next = (written.unit === 'min' ? Math.round(value * share) : Math.round(value * share * 100) / 100).toString();
            if (compare(fromDigits(next), fromDigits(written.likely)) === 0) continue;
            seen.values++;
            if (pick(at(next)) === today) continue;
            seen.turned++;
            const near = flips.filter((flip) => flip.measure === 'quoted' && flip.way === way && Number(flip.value) === value && Math.abs(Number(flip.flips) - value) <= Math.abs(Number(next) - value) + 1e-9);
            expect(near.length, `${written.likely} at ${next} in\n${text}`).toBeGreaterThan(0);
            break;
          }
        }
      }
    }), runs(66_021, 3));
    expect(seen.values).toBeGreaterThan(1500);
    expect(seen.turned).toBeGreaterThan(15);
  });

  it('told values hold on the one side and turn the choice on the other', PATIENT, () => {
    let sides = 0;
    fc.assert(fc.property(closeEstimate, (text) => {
      const records = readText(text);
      const { flips, options } = told(texts(text));
      const today = pick(records);
      expect(today).toBe(options.find(({ rank }) => rank === 1)?.name);
      const all = figures(records);
      for (const flip of flips) {
        const same = all.filter(({ written }) => written.likely === flip.value);
        // Where a value is written twice, its line is not told apart here.
        if (flip.measure !== 'quoted' || same.length !== 1) continue;
        const picks = [flip.holds, flip.flips].map((value) => pick((same[0] as (typeof all)[number]).at(value)));
        expect(picks, `${flip.sentence}\n${text}`).toEqual([today, flip.to]);
        sides += 2;
      }
    }), runs(66_022, 25));
    expect(sides).toBeGreaterThan(250);
  });
});
