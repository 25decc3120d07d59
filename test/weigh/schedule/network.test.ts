import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { criticalPath, LONGEST, MOST_PATHS, type Activity, type ActivityTimes, type NetworkPlan } from '../../../src/weigh/schedule/index.js';
import { PATIENT, runs } from '../../support/random-runs.js';
import { PUBLISHED, table } from './published.js';

function plan(activities: readonly Activity[]): NetworkPlan {
  const result = criticalPath(activities);
  if (result.kind !== 'planned') throw new Error(JSON.stringify(result));
  return result;
}

function timesOf(found: NetworkPlan, id: string): ActivityTimes {
  return found.activities.find((one) => one.id === id) as ActivityTimes;
}

describe('published networks', () => {
  test.each(PUBLISHED)('$source', ({ activities, path, finish, slack }) => {
    const found = plan(activities);
    expect(found.finish).toBeCloseTo(finish, 9);
    expect(found.critical.join(' ')).toBe(path);
    expect(found.paths).toEqual([path.split(' ')]);
    expect(found.pathCount).toBe(1);
    for (const { id, totalSlack, critical } of found.activities) {
      expect(critical).toBe(path.split(' ').includes(id));
      expect(totalSlack).toBeCloseTo(slack[id] ?? 0, 9);
    }
  });

  // Hillier & Lieberman, Introduction to Operations Research, Reliable Construction (from memory, recomputed).
  it('gives the times of Reliable Construction', () => {
    const found = plan((PUBLISHED[2] as (typeof PUBLISHED)[number]).activities);
    const rows = found.activities.map((one) => [one.id, one.earlyStart, one.earlyFinish, one.lateStart, one.lateFinish]);
    expect(rows).toEqual([
      ['A', 0, 2, 0, 2], ['B', 2, 6, 2, 6], ['C', 6, 16, 6, 16], ['D', 16, 22, 20, 26], ['E', 16, 20, 16, 20], ['F', 20, 25, 20, 25], ['G', 22, 29, 26, 33],
      ['H', 29, 38, 33, 42], ['I', 16, 23, 18, 25], ['J', 25, 33, 25, 33], ['K', 33, 37, 34, 38], ['L', 33, 38, 33, 38], ['M', 38, 40, 42, 44], ['N', 38, 44, 38, 44],
    ]);
  });
});

// Against all paths ----------------------------------------------------------

/** Activities in tenths, so that sums in whole numbers are exact where those in decimals are not. */
interface Tenths { readonly after: readonly number[]; readonly tenths: number }

const networks: fc.Arbitrary<readonly Tenths[]> = fc.integer({ min: 1, max: 9 }).chain((count) => fc.tuple(...Array.from({ length: count }, (_, i) => fc.record({
  after: i === 0 ? fc.constant([]) : fc.array(fc.integer({ min: 0, max: i - 1 }), { maxLength: 3 }),
  tenths: fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 4, arbitrary: fc.integer({ min: 1, max: 7 }) }),
}))));

/** The table backwards, so that predecessors stand behind. */
function asTable(network: readonly Tenths[]): Activity[] {
  return network.map(({ after, tenths }, i) => ({ id: `n${i}`, after: after.map((one) => `n${one}`), duration: { low: tenths / 10, likely: tenths / 10, high: tenths / 10 } })).reverse();
}

/** Every path from an activity without predecessors to one without successors. */
function allPaths(network: readonly Tenths[]): number[][] {
  const successors = network.map((_, i) => network.flatMap(({ after }, j) => (after.includes(i) ? [j] : [])));
  const onward = (i: number): number[][] => ((successors[i] as number[]).length === 0 ? [[i]] : (successors[i] as number[]).flatMap((next) => onward(next).map((rest) => [i, ...rest])));
  return network.flatMap(({ after }, i) => (after.length === 0 ? onward(i) : []));
}

const length = (network: readonly Tenths[], path: readonly number[]): number => path.reduce((sum, i) => sum + (network[i] as Tenths).tenths, 0);

describe('times and slack', () => {
  it('are those of the longest of all paths (random networks)', PATIENT, () => {
    let noisy = 0;
    fc.assert(fc.property(networks, (network) => {
      const found = plan(asTable(network));
      const paths = allPaths(network);
      const finish = Math.max(...paths.map((path) => length(network, path)));
      expect(found.finish).toBeCloseTo(finish / 10, 9);
      if (found.finish !== finish / 10) noisy++;
      const longest = paths.filter((path) => length(network, path) === finish);
      expect(found.pathCount).toBe(longest.length);
      const named = longest.map((path) => path.map((i) => `n${i}`).join(' '));
      const listed = found.paths.map((path) => path.join(' '));
      expect(new Set(listed).size).toBe(listed.length);
      if (longest.length <= MOST_PATHS) expect([...listed].sort()).toEqual([...named].sort());
      for (const [i, { after, tenths }] of network.entries()) {
        const through = paths.filter((path) => path.includes(i));
        const earlyStart = Math.max(...through.map((path) => length(network, path.slice(0, path.indexOf(i)))));
        const lateFinish = finish - Math.max(...through.map((path) => length(network, path.slice(path.indexOf(i) + 1))));
        const times = timesOf(found, `n${i}`);
        expect(times.earlyStart).toBeCloseTo(earlyStart / 10, 9);
        expect(times.earlyFinish).toBeCloseTo((earlyStart + tenths) / 10, 9);
        expect(times.lateFinish).toBeCloseTo(lateFinish / 10, 9);
        expect(times.lateStart).toBeCloseTo((lateFinish - tenths) / 10, 9);
        expect(times.critical).toBe(longest.some((path) => path.includes(i)));
        expect(times.totalSlack === 0).toBe(times.critical);
        expect(times.freeSlack).toBeGreaterThanOrEqual(0);
        expect(times.freeSlack).toBeLessThanOrEqual(times.totalSlack);
        if (after.length === 0) expect(times.earlyStart).toBe(0);
      }
      expect(found.critical).toEqual(found.activities.filter((one) => one.critical).map(({ id }) => id).sort((a, b) => found.critical.indexOf(a) - found.critical.indexOf(b)));
    }), runs(11, 150));
    expect(noisy).toBeGreaterThan(10);
  });

  it('mean what they say when an activity takes longer (random networks)', PATIENT, () => {
    const longer = (activities: readonly Activity[], id: string, by: number): NetworkPlan => plan(activities.map((one) => (one.id === id ? { ...one, duration: { low: one.duration.low + by, likely: one.duration.low + by, high: one.duration.low + by } } : one)));
    fc.assert(fc.property(networks, (network) => {
      const activities = asTable(network);
      const found = plan(activities);
      for (const { id, totalSlack, freeSlack } of found.activities) {
        expect(longer(activities, id, totalSlack).finish).toBeCloseTo(found.finish, 9);
        expect(longer(activities, id, totalSlack + 0.1).finish).toBeCloseTo(found.finish + 0.1, 9);
        const starts = (other: NetworkPlan): number[] => other.activities.flatMap((one) => (one.id === id ? [] : [Math.round(one.earlyStart * 1e6)]));
        expect(starts(longer(activities, id, freeSlack))).toEqual(starts(found));
        const more = longer(activities, id, freeSlack + 0.1);
        expect(more.finish > found.finish + 0.05 || starts(more).some((start, i) => start > (starts(found)[i] as number))).toBe(true);
      }
    }), runs(12, 50));
  });
});

describe('the shape of a table', () => {
  it('may be empty', () => {
    expect(plan([])).toMatchObject({ activities: [], finish: 0, critical: [], paths: [], pathCount: 0 });
  });

  it('takes sums with noise in the last bit for the same length', () => {
    // 0.1 + 0.2 is not 0.3 in binary fractions.
    const found = plan(table('A - 0.1; B A 0.2; C - 0.3; D B,C 1'));
    expect(found.critical).toEqual(['A', 'C', 'B', 'D']);
    expect(found.paths).toEqual([['A', 'B', 'D'], ['C', 'D']]);
  });

  it('takes a predecessor named twice once, and dummies of no length', () => {
    const found = plan(table('A - 2; N A,A 0; B N,N,A 3'));
    expect(found.critical).toEqual(['A', 'N', 'B']);
    expect(found.paths).toEqual([['A', 'B'], ['A', 'N', 'B']]);
  });

  it('counts more critical paths than it lists', () => {
    // Ten stages of two alternatives: 2 to the tenth paths.
    const rows = Array.from({ length: 10 }, (_, i) => `a${i} ${i === 0 ? '-' : `a${i - 1},b${i - 1}`} 1; b${i} ${i === 0 ? '-' : `a${i - 1},b${i - 1}`} 1`);
    const found = plan(table(rows.join('; ')));
    expect(found.pathCount).toBe(1024);
    expect(found.paths).toHaveLength(MOST_PATHS);
    expect(found.paths.every((path) => path.length === 10)).toBe(true);
  });

  it('may be as long as 5 000 activities in a row', () => {
    const found = plan(Array.from({ length: 5_000 }, (_, i) => ({ id: `${i}`, after: i === 0 ? [] : [`${i - 1}`], duration: { low: 0.1, likely: 0.1, high: 0.1 } })));
    expect(found.critical).toHaveLength(5_000);
    expect(found.paths[0]).toHaveLength(5_000);
  });

  it('has no not-a-number for nothing or for the longest duration', () => {
    for (const size of [0, LONGEST]) {
      const found = plan(table(`A - ${size}; B A ${size}; C - 0; D B,C ${size}; E - 1`));
      for (const times of found.activities) for (const value of Object.values(times)) expect(value).not.toBeNaN();
      expect(found.finish).toBe(Math.max(3 * size, 1));
    }
  });
});

describe('a table with a fault', () => {
  test.each([
    ['A - 1; B A,X 1', { kind: 'unknown-predecessor', id: 'B', predecessor: 'X' }],
    ['A - 1; B A 1; A - 2', { kind: 'twice', id: 'A' }],
    ['A - 1; B A,D 1; C B 1; D C 1; E D 1', { kind: 'circle', ids: ['B', 'C', 'D'] }],
    ['A - 1; B B 1', { kind: 'circle', ids: ['B'] }],
    ['A - -1', { kind: 'no-duration', id: 'A' }],
    ['A - 1; B - 1/x/2', { kind: 'no-duration', id: 'B' }],
    ['A - 1e308', { kind: 'no-duration', id: 'A' }],
  ])('%s', (text, problem) => {
    expect(criticalPath(table(text))).toEqual(problem);
  });
});
