import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { occurs } from '../../../src/weigh/chance/draws.js';
import { betaPert, createDraws } from '../../../src/weigh/chance/index.js';
import { drawsFor, fnv1a, mixed, xoshiro128 } from '../../../src/weigh/chance/random.js';
import { runs } from '../../support/random-runs.js';
import { triangular } from './triangular.js';

const CASES = 1024;
const sample = createDraws({ cases: CASES, seed: 20_417 });

describe('the generator', () => {
  it('is xoshiro128** 1.1 (output of its authors\' C code from the state 1, 2, 3, 4: read in a test of public code, recomputed)', () => {
    const next = xoshiro128([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, next)).toEqual([11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804]);
  });

  it('hashes as FNV-1a does (RFC 9923, test vectors of 32 bits; from memory, recomputed)', () => {
    expect([fnv1a(''), fnv1a('a'), fnv1a('foobar')]).toEqual([0x811c9dc5, 0xe40c292c, 0xbf9cf968]);
    expect(fnv1a('ж')).not.toBe(fnv1a('6'));
  });

  it('finishes as MurmurHash3 does (mixed(0) is 0, mixed(1) is 0x514e28b7; from memory, recomputed)', () => {
    expect([mixed(0), mixed(1)]).toEqual([0, 0x514e28b7]);
  });

  it('draws evenly (chi-squared of 64 cells, 63 degrees of freedom, within its 0.0001 points: 29.5 to 113.5)', () => {
    for (const key of ['', 'a', 'b', 'head', 'line 1', 'line 2']) {
      const draw = drawsFor(key, 1);
      const cells = new Float64Array(64);
      for (let i = 0; i < 64_000; i++) cells[draw(64)]!++;
      const chi = cells.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
      expect(chi).toBeGreaterThan(29.5);
      expect(chi).toBeLessThan(113.5);
    }
  });
});

describe('a sample', () => {
  it('takes every stratum once', () => {
    for (const cases of [1, 2, 3, 1000, 65_536]) {
      const order = createDraws({ cases, seed: 5 }).permutation('head');
      expect(order).toHaveLength(cases);
      expect(order.toSorted().every((stratum, i) => stratum === i)).toBe(true);
    }
  });

  it('is the same to the byte, always and everywhere', () => {
    const bytes = createHash('sha256');
    const add = (column: Uint16Array | Uint8Array | Float64Array) => bytes.update(Array.from(column, String).join(' '));
    for (const key of ['head', 'part block', 'Ж']) {
      add(sample.permutation(key));
      add(sample.happens(key, 0.3));
      add(sample.amounts(key, betaPert({ low: 1, likely: 2.5, high: 7 })));
      add(sample.amounts(key, triangular({ low: 1, likely: 2.5, high: 7 })));
    }
    expect(bytes.digest('hex')).toBe('33d9ba2a04d2bcdb05fb4f4098949a3c5d7897ce82ecde7b2f480d5148c54403');
  });

  it('leaves a column as it was when others come and go', () => {
    const other = createDraws({ cases: CASES, seed: 20_417 });
    for (let i = 0; i < 10; i++) other.permutation(`more ${i}`);
    expect(other.permutation('head')).toEqual(sample.permutation('head'));
    expect(createDraws({ cases: CASES, seed: 20_418 }).permutation('head')).not.toEqual(sample.permutation('head'));
  });

  it('pairs columns of different keys at random: no correlation beyond 5/√cases, squares 1/cases on average within a tenth', () => {
    const keys = [...Array.from({ length: 30 }, (_, i) => `line ${i}`), ...'abcdefghijklmnopqrst', 'ab', 'ba', 'ж', ''];
    const columns = keys.map((key) => sample.permutation(key));
    let squares = 0;
    let pairs = 0;
    columns.forEach((a, i) => columns.slice(0, i).forEach((b) => {
      const r = correlation(a, b);
      expect(Math.abs(r)).toBeLessThan(5 / Math.sqrt(CASES));
      squares += r * r;
      pairs++;
    }));
    expect((squares / pairs) * CASES).toBeGreaterThan(0.9);
    expect((squares / pairs) * CASES).toBeLessThan(1.1);
  });

  it('has the same chances in every order of neighbours: a shuffle of 4 is each of 24 within 5 standard errors', () => {
    const counts = new Map<string, number>();
    for (let seed = 0; seed < 12_000; seed++) {
      const order = createDraws({ cases: 4, seed }).permutation('head').join('');
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect(counts.size).toBe(24);
    for (const count of counts.values()) expect(Math.abs(count - 500)).toBeLessThan(5 * Math.sqrt(500));
  });

  it('lets a chance happen in as many cases as it should, within a half (random chances)', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 1, max: 300 }), (chance, cases) => {
      const count = createDraws({ cases, seed: 3 }).happens('head', chance).reduce((sum, one) => sum + one, 0);
      expect(Math.abs(count - chance * cases)).toBeLessThanOrEqual(0.5 + 1e-9);
    }), runs(31, 200));
    expect(sample.happens('head', 0).includes(1)).toBe(false);
    expect(sample.happens('head', 1).includes(0)).toBe(false);
  });

  it('refuses impossible plans and chances', () => {
    for (const cases of [0, 1.5, 65_537, NaN]) expect(() => createDraws({ cases, seed: 1 }).permutation('a')).toThrow(RangeError);
    for (const chance of [-0.1, 1.1, NaN]) expect(() => occurs(sample.permutation('a'), chance)).toThrow(RangeError);
  });
});

/** Of two permutations of the same numbers. */
function correlation(a: Uint16Array, b: Uint16Array): number {
  const mean = (a.length - 1) / 2;
  let both = 0;
  let own = 0;
  for (let i = 0; i < a.length; i++) {
    both += ((a[i] as number) - mean) * ((b[i] as number) - mean);
    own += ((a[i] as number) - mean) ** 2;
  }
  return both / own;
}
