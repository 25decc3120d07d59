import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weighTest, type TestQuestion, type TestWeighed } from '../../../src/weigh/decide/information.js';
import { PATIENT, runs } from '../../support/random-runs.js';

/** A question from tables: a row for each action, and a row for each result with its chance in each state. */
function question(chances: readonly number[], actions: readonly (readonly number[])[], results: readonly (readonly number[])[], price: number, goal: 'most' | 'least' = 'most'): TestQuestion {
  return {
    goal,
    states: chances.map((chance, i) => ({ name: `state ${i}`, chance })),
    actions: actions.map((values, i) => ({ name: `action ${i}`, values })),
    test: { price, results: results.map((chance, i) => ({ name: `result ${i}`, chances: chance })) },
  };
}

function weighed(asked: TestQuestion): TestWeighed {
  const answer = weighTest(asked);
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.problems));
  return answer;
}

const rounded = (values: readonly (number | undefined)[] | undefined, digits = 4) => values?.map((value) => Number(value?.toFixed(digits)));

// Printed cases ------------------------------------------------------------------

interface Printed {
  readonly source: string;
  readonly asked: TestQuestion;
  readonly expected: readonly number[];
  readonly best: number;
  readonly withPerfect: number;
  readonly perfectWorth: number;
  readonly chances: readonly number[];
  readonly posteriors: readonly (readonly number[])[];
  readonly after: readonly number[];
  readonly withTest: number;
  readonly worth: number;
  readonly verdict: TestWeighed['verdict'];
}

const printed: readonly Printed[] = [
  {
    source: 'Hillier & Lieberman, Introduction to Operations Research, Goferbroke (read)',
    asked: question([0.25, 0.75], [[700, -100], [90, 90]], [[0.6, 0.2], [0.4, 0.8]], 30),
    expected: [100, 90], best: 0, withPerfect: 242.5, perfectWorth: 142.5,
    chances: [0.3, 0.7], posteriors: [[0.5, 0.5], [0.1429, 0.8571]], after: [0, 1], withTest: 153, worth: 53, verdict: 'worth doing',
  },
  {
    // The book goes on with .78 and .27 and so prints 59 200 and 19 200.
    source: 'Render & Stair, Quantitative Analysis for Management, Thompson Lumber (from memory, recomputed without the rounding of posteriors)',
    asked: question([0.5, 0.5], [[200_000, -180_000], [100_000, -20_000], [0, 0]], [[0.7, 0.2], [0.3, 0.8]], 10_000),
    expected: [10_000, 40_000, 0], best: 1, withPerfect: 100_000, perfectWorth: 60_000,
    chances: [0.45, 0.55], posteriors: [[0.7778, 0.2222], [0.2727, 0.7273]], after: [0, 1], withTest: 59_000, worth: 19_000, verdict: 'worth doing',
  },
  {
    // The book goes on with rounded posteriors and so prints 15.93 and 1.73.
    source: 'Anderson, Sweeney & Williams, Quantitative Methods for Business, three sizes of a building (from memory, recomputed without the rounding of posteriors)',
    asked: question([0.8, 0.2], [[8, 7], [14, 5], [20, -9]], [[0.9, 0.25], [0.1, 0.75]], 0.5),
    expected: [7.8, 12.2, 14.2], best: 2, withPerfect: 17.4, perfectWorth: 3.2,
    chances: [0.77, 0.23], posteriors: [[0.9351, 0.0649], [0.3478, 0.6522]], after: [2, 1], withTest: 15.82, worth: 1.62, verdict: 'worth doing',
  },
  {
    // Given there by chances after the survey (.85 after success, .10 after failure, success .60): turned round here.
    source: 'Winston, Operations Research, ch. 13, a local survey before selling nationally, in thousands (from memory, recomputed)',
    asked: question([0.55, 0.45], [[450, 50], [150, 150]], [[0.51 / 0.55, 0.09 / 0.45], [0.04 / 0.55, 0.36 / 0.45]], 30),
    expected: [270, 150], best: 0, withPerfect: 315, perfectWorth: 45,
    chances: [0.6, 0.4], posteriors: [[0.85, 0.15], [0.1, 0.9]], after: [0, 1], withTest: 294, worth: 24, verdict: 'not worth its price',
  },
];

describe.each(printed)('$source', (one) => {
  const found = weighed(one.asked);

  it('without the test, and with perfect information', () => {
    expect(rounded(found.expected)).toEqual(one.expected);
    expect(found.best).toBe(one.best);
    expect(rounded([found.withPerfect, found.perfectWorth])).toEqual([one.withPerfect, one.perfectWorth]);
  });

  it('after each result', () => {
    expect(rounded(found.results.map((result) => result.chance))).toEqual(one.chances);
    expect(found.results.map((result) => rounded(result.posteriors))).toEqual(one.posteriors);
    expect(found.results.map((result) => result.best)).toEqual(one.after);
    expect(found.results.map((result) => result.changes)).toEqual(one.after.map((action) => action !== one.best));
  });

  it('with the test', () => {
    expect(rounded([found.withTest, found.worth, found.net])).toEqual(rounded([one.withTest, one.worth, one.worth - one.asked.test.price]));
    expect(found.verdict).toBe(one.verdict);
  });
});

it('Goferbroke: posteriors are 1/2 and 1/7, not rounded (read)', () => {
  const { results } = weighed(question([0.25, 0.75], [[700, -100], [90, 90]], [[0.6, 0.2], [0.4, 0.8]], 30));
  expect(results[0]?.posteriors?.[0]).toBeCloseTo(1 / 2, 15);
  expect(results[1]?.posteriors?.[0]).toBeCloseTo(1 / 7, 15);
});

it('Goferbroke: 270 for drilling where the survey is favourable and −15.7 where not, after its 30, against 60 for selling (from memory)', () => {
  const { results } = weighed(question([0.25, 0.75], [[700, -100], [90, 90]], [[0.6, 0.2], [0.4, 0.8]], 30));
  expect(results.map((result) => rounded(result.expected?.map((value) => value - 30), 1))).toEqual([[270, 60], [-15.7, 60]]);
});

// Edges --------------------------------------------------------------------------

describe('edges (computed)', () => {
  const oil = [[700, -100], [90, 90]];

  it('a result that can not occur has no posterior', () => {
    const found = weighed(question([0.25, 0.75], oil, [[0.6, 0.2], [0.4, 0.8], [0, 0]], 30));
    expect(found.results[2]).toEqual({ name: 'result 2', chance: 0, posteriors: undefined, expected: undefined, best: undefined, changes: false });
    expect(found.worth).toBeCloseTo(53, 12);
  });

  it('a test that says the same in every state is worth exactly 0 and changes nothing', () => {
    const found = weighed(question([0.1, 0.2, 0.7], [[3, 1, 2], [9, 0, 1], [2, 2, 2]], [[0.3, 0.3, 0.3], [0.7, 0.7, 0.7]], 0));
    expect([found.worth, found.net, found.verdict]).toEqual([0, 0, 'cannot change the choice']);
  });

  it('a test that tells the states apart but leaves one action best is worth exactly 0', () => {
    const found = weighed(question([0.3, 0.7], [[5, 6], [4, 1]], [[1, 0], [0, 1]], 2));
    expect([found.worth, found.net, found.withTest, found.verdict]).toEqual([0, -2, found.expected[0], 'cannot change the choice']);
  });

  it('a tie goes to the earlier action, and to today’s choice after a result', () => {
    // Without the test 1 is the best; after the first result all are equal.
    const found = weighed(question([0.5, 0.5], [[4, 0], [4, 2], [4, 1]], [[1, 0], [0, 1]], 1));
    expect(found.best).toBe(1);
    expect(found.results.map((result) => [result.best, result.changes])).toEqual([[1, false], [1, false]]);
    expect(weighed(question([0.5, 0.5], [[1, 3], [2, 2], [3, 1]], [[1, 1]], 1)).best).toBe(0);
  });

  it('a tie is one too where one action wins much and loses much, and where nothing is at stake', () => {
    const found = weighed(question([0.5, 0.5], [[4, -2], [1, 1]], [[1, 1]], 0));
    expect([found.best, found.results[0]?.changes]).toEqual([0, false]);
    expect(weighed(question([0.5, 0.5], [[0, 0], [0, 0]], [[1, 1]], 0)).best).toBe(0);
  });

  it('a tie on paper that doubles break is a tie: 0.1 + 0.2 against 0.3', () => {
    const third = [0.1, 0.2, 0.7];
    const found = weighed(question(third, [[0.3, 0.3, 0.3], [1, 1, 0]], [[1, 1, 1]], 0));
    expect(0.1 + 0.2).toBeGreaterThan(0.3);
    expect(found.best).toBe(0);
  });

  it('at exactly its price a test is left out', () => {
    const at = (price: number) => weighed(question([0.25, 0.75], oil, [[0.6, 0.2], [0.4, 0.8]], price)).verdict;
    expect([at(52.999), at(53), at(53.001)]).toEqual(['worth doing', 'not worth its price', 'not worth its price']);
  });

  it('at exactly its price, too, where the gain is a small difference of large values', () => {
    // 0.30 gained in half of the cases, of which the values keep ten digits.
    const at = (price: number) => weighed(question([0.5, 0.5], [[1e6, 1e6], [1e6 + 0.3, 1e6 - 0.3]], [[1, 0], [0, 1]], price)).verdict;
    expect(1e6 + 0.3 - 1e6).toBeGreaterThan(0.3);
    expect([at(0.14), at(0.15)]).toEqual(['worth doing', 'not worth its price']);
  });

  it('one state, one action, one result', () => {
    const found = weighed(question([1], [[7]], [[1]], 3));
    expect([found.expected, found.perfectWorth, found.worth, found.net, found.verdict]).toEqual([[7], 0, 0, -3, 'cannot change the choice']);
  });

  it('chances a little above 1 in sum do not lift a test above perfect information', () => {
    const found = weighed(question([0.5, 0.5], [[0, 1], [1, 0]], [[1, 0], [0, 1], [5e-10, 0]], 0));
    expect([found.worth, found.perfectWorth]).toEqual([0.5, 0.5]);
  });

  it('no −0 in costs', () => {
    expect(weighed(question([1], [[0]], [[1]], 0, 'least')).expected).toEqual([0]);
  });
});

describe('what can not be weighed comes back as problems', () => {
  const good = { chances: [0.4, 0.6], actions: [[1, 2]], results: [[0.5, 0.5], [0.5, 0.5]], price: 1 };
  const cases: readonly [string, Partial<typeof good>, readonly object[]][] = [
    ['no state', { chances: [], actions: [[]], results: [[]] }, [{ kind: 'nothing given', of: 'states' }]],
    ['no action', { actions: [] }, [{ kind: 'nothing given', of: 'actions' }]],
    ['no result', { results: [] }, [{ kind: 'nothing given', of: 'results' }]],
    ['a chance below 0', { chances: [-0.1, 1.1] }, [{ kind: 'chance out of range', state: 0, result: undefined, chance: -0.1 }, { kind: 'chance out of range', state: 1, result: undefined, chance: 1.1 }]],
    ['a chance that is not a number', { chances: [NaN, 1] }, [{ kind: 'chance out of range', state: 0, result: undefined, chance: NaN }, { kind: 'chances do not add up', state: undefined, sum: NaN }]],
    ['chances of 0.99', { chances: [0.4, 0.59] }, [{ kind: 'chances do not add up', state: undefined, sum: 0.99 }]],
    ['chances off by 2e-9', { chances: [0.4, 0.600000002] }, [{ kind: 'chances do not add up', state: undefined, sum: 0.4 + 0.600000002 }]],
    ['results that do not add up in a state', { results: [[0.5, 0.5], [0.5, 0.25]] }, [{ kind: 'chances do not add up', state: 1, sum: 0.75 }]],
    ['a result’s chance above 1', { results: [[1.5, 0.5], [-0.5, 0.5]] }, [{ kind: 'chance out of range', state: 0, result: 0, chance: 1.5 }, { kind: 'chance out of range', state: 0, result: 1, chance: -0.5 }]],
    ['an action too short', { actions: [[1]] }, [{ kind: 'wrong length', of: 'action', index: 0, length: 1, needed: 2 }]],
    ['a result too long', { results: [[0.5, 0.5, 0.5], [0.5, 0.5]] }, [{ kind: 'wrong length', of: 'result', index: 0, length: 3, needed: 2 }]],
    ['a value that is not finite', { actions: [[1, Infinity], [NaN, 0]] }, [{ kind: 'value out of range', action: 0, state: 1, value: Infinity }, { kind: 'value out of range', action: 1, state: 0, value: NaN }]],
    ['an action and a result too short, of which no sum is made', { actions: [[1]], results: [[0.5], [0.5, 0.25]] }, [{ kind: 'wrong length', of: 'action', index: 0, length: 1, needed: 2 }, { kind: 'wrong length', of: 'result', index: 0, length: 1, needed: 2 }]],
    ['a price that sums can not hold', { price: 1e101 }, [{ kind: 'price out of range', price: 1e101 }]],
    ['a price below 0', { price: -1 }, [{ kind: 'price out of range', price: -1 }]],
  ];

  it.each(cases)('%s', (_, change, problems) => {
    const { chances, actions, results, price } = { ...good, ...change };
    expect(weighTest(question(chances, actions, results, price))).toEqual({ kind: 'refused', problems });
  });

  it('values up to 1e100 are taken, up and down', () => {
    expect(weighTest(question([0.4, 0.6], [[1e100, -1e100]], [[1, 1]], 1e100)).kind).toBe('weighed');
    expect(weighTest(question([0.4, 0.6], [[1, 1.1e100]], [[1, 1]], 0)).kind).toBe('refused');
  });

  it('chances off by less than 1e-9 are taken', () => {
    expect(weighTest(question([0.3333333333, 0.6666666666], [[1, 2]], [[1, 1]], 0)).kind).toBe('weighed');
  });
});

// Laws ---------------------------------------------------------------------------

/** Rows that add up to 1, some of them with noughts. */
const shares = (length: number) => fc.array(fc.integer({ min: 0, max: 9 }), { minLength: length, maxLength: length }).map((parts) => {
  const all = parts.every((part) => part === 0) ? parts.map(() => 1) : parts;
  const sum = all.reduce((total, part) => total + part, 0);
  return all.map((part) => part / sum);
});

const transposed = (rows: readonly (readonly number[])[]) => (rows[0] ?? []).map((_, i) => rows.map((row) => row[i] as number));

const random = fc.record({ states: fc.integer({ min: 1, max: 4 }), actions: fc.integer({ min: 1, max: 4 }), results: fc.integer({ min: 1, max: 3 }) }).chain((size) => fc.record({
  chances: shares(size.states),
  // Small whole values, so that ties are common.
  actions: fc.array(fc.array(fc.integer({ min: -9, max: 9 }), { minLength: size.states, maxLength: size.states }), { minLength: size.actions, maxLength: size.actions }),
  /** For each state the chances of the results. */
  given: fc.array(shares(size.results), { minLength: size.states, maxLength: size.states }),
  garble: fc.array(shares(3), { minLength: size.results, maxLength: size.results }),
  price: fc.integer({ min: 0, max: 4 }),
}));

describe('laws, on random questions', () => {
  it('the expected value with the test is that of the best rule from results to actions, all rules tried', PATIENT, () => {
    fc.assert(fc.property(random, ({ chances, actions, given, price }) => {
      const results = transposed(given);
      const found = weighed(question(chances, actions, results, price));
      let best = -Infinity;
      for (let rule = 0; rule < actions.length ** results.length; rule++) {
        let sum = 0;
        for (const [r, row] of results.entries()) {
          const action = actions[Math.floor(rule / actions.length ** r) % actions.length] as readonly number[];
          for (const [s, chance] of chances.entries()) sum += chance * (row[s] as number) * (action[s] as number);
        }
        best = Math.max(best, sum);
      }
      expect(found.withTest).toBeCloseTo(best, 9);
      expect(found.worth).toBeCloseTo(best - Math.max(...found.expected), 9);
    }), runs(8101, 200));
  });

  it('worth is 0 or more, exactly 0 just where no result changes the choice, and never above perfect information', PATIENT, () => {
    const seen = { changing: 0, not: 0 };
    fc.assert(fc.property(random, ({ chances, actions, given, price }) => {
      const found = weighed(question(chances, actions, transposed(given), price));
      const changes = found.results.some((result) => result.changes);
      seen[changes ? 'changing' : 'not']++;
      expect(found.worth > 0).toBe(changes);
      expect(found.worth).toBeGreaterThanOrEqual(0);
      expect(found.worth).toBeLessThanOrEqual(found.perfectWorth);
      expect(found.verdict === 'cannot change the choice').toBe(!changes);
    }), runs(8102, 400));
    // Both kinds are met with.
    expect(Math.min(seen.changing, seen.not)).toBeGreaterThan(40);
  });

  it('posteriors add up to 1 and, weighted by the results, to the chances before the test', PATIENT, () => {
    fc.assert(fc.property(random, ({ chances, actions, given, price }) => {
      const { results } = weighed(question(chances, actions, transposed(given), price));
      expect(results.reduce((sum, result) => sum + result.chance, 0)).toBeCloseTo(1, 12);
      for (const { posteriors } of results) if (posteriors !== undefined) expect(posteriors.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
      for (const [s, chance] of chances.entries()) {
        expect(results.reduce((sum, result) => sum + result.chance * (result.posteriors?.[s] ?? 0), 0)).toBeCloseTo(chance, 12);
      }
    }), runs(8103, 100));
  });

  it('a perfect test is perfect information, a useless one is worth 0', PATIENT, () => {
    fc.assert(fc.property(random, ({ chances, actions, garble, price }) => {
      const perfect = weighed(question(chances, actions, chances.map((_, i) => chances.map((__, s) => (i === s ? 1 : 0))), price));
      expect(perfect.worth).toBe(perfect.perfectWorth);
      expect(perfect.withTest).toBe(perfect.withPerfect);
      expect(perfect.perfectWorth).toBeCloseTo(chances.reduce((sum, chance, s) => sum + chance * Math.max(...actions.map((values) => values[s] as number)), 0) - Math.max(...perfect.expected), 9);
      const useless = weighed(question(chances, actions, (garble[0] as readonly number[]).map((share) => chances.map(() => share)), price));
      expect(useless.worth).toBe(0);
    }), runs(8104, 150));
  });

  it('a garbled test is never worth more (Blackwell, Equivalent Comparisons of Experiments, 1953)', PATIENT, () => {
    let less = 0;
    fc.assert(fc.property(random, ({ chances, actions, given, garble, price }) => {
      const garbled = given.map((row) => [0, 1, 2].map((to) => row.reduce((sum, share, r) => sum + share * ((garble[r] as readonly number[])[to] as number), 0)));
      const clear = weighed(question(chances, actions, transposed(given), price)).worth;
      const after = weighed(question(chances, actions, transposed(garbled), price)).worth;
      if (after < clear - 1e-6) less++;
      expect(after).toBeLessThanOrEqual(clear + 1e-12);
    }), runs(8105, 400));
    expect(less).toBeGreaterThan(20);
  });

  it('the most of payoffs is the least of their mirror image as costs', PATIENT, () => {
    fc.assert(fc.property(random, ({ chances, actions, given, price }) => {
      const most = weighed(question(chances, actions, transposed(given), price));
      const least = weighed(question(chances, actions.map((values) => values.map((value) => 0 - value)), transposed(given), price, 'least'));
      const mirror = (values: readonly number[] | undefined) => values?.map((value) => 0 - value);
      expect(least).toEqual({
        ...most, expected: mirror(most.expected), withPerfect: 0 - most.withPerfect, withTest: 0 - most.withTest,
        results: most.results.map((result) => ({ ...result, expected: mirror(result.expected) })),
      });
    }), runs(8106, 150));
  });

  it('the same for actions that are told in another order, but for ties', PATIENT, () => {
    fc.assert(fc.property(random, ({ chances, actions, given, price }) => {
      const asked = question(chances, actions, transposed(given), price);
      const turned = weighed({ ...asked, actions: [...asked.actions].reverse() });
      const found = weighed(asked);
      expect(turned.worth).toBeCloseTo(found.worth, 9);
      expect(turned.perfectWorth).toBeCloseTo(found.perfectWorth, 9);
    }), runs(8107, 100));
  });
});
