import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { happening, MOST_CHANCES, needsOf, statesOf, type YesNo } from '../../../src/weigh/chance/index.js';
import { runs } from '../../support/random-runs.js';
import { chanceOfAtMost, type Discrete, momentsOf, sumOf } from './discrete.js';

const likelihood = fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true }));
const times = (count: number, one: Discrete) => Array.from({ length: count }, () => one);

describe('the sum of independent variables', () => {
  it('is Binomial(10, .1) for ten chances: P(at most 2) = .9298091736 (computed from the formula; standard tables: .9298)', () => {
    const sum = sumOf(times(10, { values: [0, 1], chances: [0.9, 0.1] }));
    expect(sum.values).toEqual(Float64Array.from({ length: 11 }, (_, i) => i));
    expect(chanceOfAtMost(sum, 2)).toBeCloseTo(0.9298091736, 12);
    expect(momentsOf(sum).mean).toBeCloseTo(1, 13);
    expect(momentsOf(sum).variance).toBeCloseTo(0.9, 13);
  });

  it('is 1 3 6 10 15 21 25 27 27 25 … in 216 for three dice (Galileo, "Sopra le scoperte dei dadi", for 10 and 9: 27 and 25)', () => {
    const sum = sumOf(times(3, { values: [6, 5, 4, 3, 2, 1], chances: new Array<number>(6).fill(1 / 6) }));
    expect(Array.from(sum.values)).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18]);
    expect(Array.from(sum.chances, (chance) => Number((chance * 216).toFixed(10)))).toEqual([1, 3, 6, 10, 15, 21, 25, 27, 27, 25, 21, 15, 10, 6, 3, 1]);
  });

  it('has the sums of means and variances, and the chances of brute force (random variables)', () => {
    const variable = fc.array(fc.tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: 0, max: 5 })), { minLength: 1, maxLength: 4 })
      .filter((all) => all.some(([, weight]) => weight > 0))
      .map((all) => {
        const total = all.reduce((sum, [, weight]) => sum + weight, 0);
        return { values: all.map(([value]) => value), chances: all.map(([, weight]) => weight / total) };
      });
    fc.assert(fc.property(fc.array(variable, { maxLength: 4 }), (variables) => {
      const sum = sumOf(variables);
      let brute = new Map([[0, 1]]);
      for (const { values, chances } of variables) {
        const next = new Map<number, number>();
        for (const [value, chance] of brute) values.forEach((more, i) => next.set(value + more, (next.get(value + more) ?? 0) + chance * (chances[i] as number)));
        brute = next;
      }
      const wanted = [...brute].filter(([, chance]) => chance > 0).sort(([a], [b]) => a - b);
      expect(Array.from(sum.values)).toEqual(wanted.map(([value]) => value));
      wanted.forEach(([, chance], i) => expect(sum.chances[i]).toBeCloseTo(chance, 12));
    }), runs(21, 150));
  });

  it('is 0 for certain of nothing, and takes certain variables and values without a chance', () => {
    expect(sumOf([])).toEqual({ values: Float64Array.of(0), chances: Float64Array.of(1) });
    expect(sumOf([{ values: [7, 9], chances: [1, 0] }, { values: [3, 3], chances: [0.5, 0.5] }]).values).toEqual(Float64Array.of(10));
  });
});

describe('states', () => {
  function states(all: readonly YesNo[]) {
    const found = statesOf(all);
    if (found.kind !== 'states') throw new Error(found.kind);
    return found;
  }

  it('are all sets of independent chances, with the binomial distribution of how many happen', () => {
    const { happened, chances } = states(Array.from({ length: 10 }, () => ({ chance: 0.1 })));
    expect(happened).toHaveLength(1024);
    let atMost2 = 0;
    happened.forEach((state, i) => (atMost2 += state.toString(2).replaceAll('0', '').length <= 2 ? (chances[i] as number) : 0));
    expect(atMost2).toBeCloseTo(0.9298091736, 12); // Binomial(10, .1), as above
  });

  it('leave out a chance where nothing happened that it hangs on', () => {
    // Worked by hand: a .2; b .5 given a; c .25 given b.
    const { happened, chances } = states([{ chance: 0.2 }, { chance: 0.5, under: [0] }, { chance: 0.25, under: [1] }]);
    expect(Array.from(happened)).toEqual([0b000, 0b001, 0b011, 0b111]);
    [0.8, 0.1, 0.075, 0.025].forEach((chance, i) => expect(chances[i]).toBeCloseTo(chance, 15));
  });

  it('leave out what can not be, and add up to 1 with each chance met (random trees)', () => {
    const tree = fc.array(fc.tuple(likelihood, fc.nat(20)), { maxLength: MOST_CHANCES })
      .map((all) => all.map(([chance, pick], i): YesNo & { readonly parent: number | undefined } => ({ chance, ...(pick < i ? { under: [pick], parent: pick } : { parent: undefined }) })));
    fc.assert(fc.property(tree, (all) => {
      const { happened, chances } = states(all);
      expect(chances.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
      expect(chances.every((one) => one > 0)).toBe(true);
      const marginal = (i: number): number => (all[i]?.chance as number) * (all[i]?.parent === undefined ? 1 : marginal(all[i].parent));
      all.forEach((one, i) => {
        let chance = 0;
        happened.forEach((state, k) => {
          if ((state & (1 << i)) === 0) return;
          chance += chances[k] as number;
          expect(one.parent === undefined || (state & (1 << one.parent)) !== 0).toBe(true);
        });
        expect(chance).toBeCloseTo(marginal(i), 12);
      });
    }), runs(22, 60));
  });

  it('let a chance happen where any of several happened that it hangs on', () => {
    // Worked by hand: a .4; b .5; c .25, where a or b happened, which is 1 - .6 × .5 = .7.
    const { happened, chances } = states([{ chance: 0.4 }, { chance: 0.25, under: [0, 2] }, { chance: 0.5 }]);
    const all = new Map(Array.from(happened, (state, i) => [state, chances[i] as number]));
    expect([...all.keys()]).toEqual([0b000, 0b001, 0b011, 0b100, 0b101, 0b110, 0b111]);
    expect((all.get(0b011) as number) + (all.get(0b110) as number) + (all.get(0b111) as number)).toBeCloseTo(0.25 * 0.7, 15);
    expect(all.get(0b000)).toBeCloseTo(0.3, 15);
  });

  it('let nothing happen that hangs on itself alone, and everything round a circle once one of it can', () => {
    expect(Array.from(states([{ chance: 0.5, under: [1] }, { chance: 0.5, under: [0] }]).happened)).toEqual([0]);
    // c .5; a .5 after c or b; b .5 after a.
    const { happened, chances } = states([{ chance: 0.5, under: [1, 2] }, { chance: 0.5, under: [0] }, { chance: 0.5 }]);
    expect(Array.from(happened)).toEqual([0b000, 0b100, 0b101, 0b111]);
    expect(Array.from(chances)).toEqual([0.5, 0.25, 0.125, 0.125]);
  });

  it('are those of a coin thrown for each, where one counts only once something it hangs on does (random nets, every throw)', () => {
    const net = fc.array(fc.tuple(likelihood, fc.array(fc.nat(7), { maxLength: 3 })), { minLength: 1, maxLength: 8 })
      .map((all) => all.map(([chance, picks]): YesNo => ({ chance, under: picks.filter((place) => place < all.length) })));
    fc.assert(fc.property(net, (all) => {
      const { happened, chances } = states(all);
      const thrown = new Map<number, number>();
      for (let coins = 0; coins < 1 << all.length; coins++) {
        const weight = all.reduce((product, { chance }, i) => product * ((coins >> i) & 1 ? chance : 1 - chance), 1);
        const counts = new Set<number>();
        // Once more than there are chances: nothing new can come of it then.
        for (let round = 0; round <= all.length; round++) all.forEach(({ under = [] }, i) => void ((coins >> i) & 1 && (under.length === 0 || under.some((place) => counts.has(place))) && counts.add(i)));
        const state = [...counts].reduce((bits, i) => bits + 2 ** i, 0);
        expect(happening(coins, needsOf(all))).toBe(state);
        if (weight > 0) thrown.set(state, (thrown.get(state) ?? 0) + weight);
      }
      expect(Array.from(happened)).toEqual([...thrown.keys()].sort((a, b) => a - b));
      happened.forEach((state, i) => expect(chances[i]).toBeCloseTo(thrown.get(state) as number, 12));
    }), runs(23, 60));
  });

  test('of none are one, of too many are not listed', () => {
    expect(states([])).toEqual({ kind: 'states', happened: Uint16Array.of(0), chances: Float64Array.of(1) });
    expect(statesOf(Array.from({ length: MOST_CHANCES + 1 }, () => ({ chance: 0.5 })))).toEqual({ kind: 'too-many-chances', most: MOST_CHANCES });
  });

  it('refuses chances beyond 0 to 1, and what hangs on none of the list', () => {
    for (const one of [{ chance: 1.1 }, { chance: NaN }, { chance: 0.5, under: [1] }, { chance: 0.5, under: [-1] }]) expect(() => statesOf([one])).toThrow(RangeError);
  });
});
