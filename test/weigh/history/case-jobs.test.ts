import { describe, expect, test } from 'vitest';
import { parse } from '../../../src/language/index.js';
import type { Sources } from '../../../src/estimate/index.js';
import { accessJob, bookOf, historyOf, labourJob, readClosed, resolvedCases } from '../../../src/weigh/history/index.js';
import { BENCH, sources as bench, URI } from '../../history/closed.js';

const CLOSED = 'closed for repair on 2026-12-09\n';

describe('jobs of the book', () => {
  test('a way in stands for itself: its hours take no other way in', () => {
    expect(accessJob({ name: 'out', title: 'Engine lowered' })).toEqual({ key: 'access out', kind: 'access', name: 'out', title: 'Engine lowered', ways: [] });
    const { cases } = readClosed(URI, `${BENCH}${CLOSED}  clocked out 8 h\n  clocked head 12 h\n`, bench);
    expect(cases.map(({ job }) => job.ways)).toEqual([[], ['out']]);
  });

  test('work is another job with other ways in, whatever order they are named in', () => {
    const pump = { name: 'pump', title: 'Coolant pump' };
    const [both, turned, single, none] = [['out', 'front'], ['front', 'out'], ['out'], []].map((ways) => labourJob(pump, ways).key);
    expect(both).toBe(turned);
    expect(new Set([both, single, none]).size).toBe(3);
  });

  test('are looked up in the book by what stands for them', () => {
    const cases = readClosed(URI, `${BENCH}${CLOSED}  clocked out 8 h\n  clocked head 12 h\n`, bench).cases;
    const book = bookOf(historyOf(cases));
    expect([...book.keys()].sort()).toEqual(['access out', 'labour head with out']);
    expect([book.get('access out')?.hours.middle, book.get('labour head with out')?.hours.middle, book.get('labour head')]).toEqual([8, 12, undefined]);
  });
});

test('clocked work for which a shared file says no hours adds nothing, and takes nothing from the rest', () => {
  const tree = parse('/shop/a.yard', 'steelyard 1\nlabour seal "Seal"\n');
  const sources: Sources = { ...bench, treeOf: (uri) => (uri === '/shop/a.yard' ? tree : bench.treeOf(uri)) };
  const text = `${BENCH.replace('use "shop.yard"', 'use "a.yard"\nuse "shop.yard"').replace('do look,', 'do look, seal,')}${CLOSED}  clocked seal 1.25 h\n  clocked head 12 h\n`;
  expect(resolvedCases(URI, text, sources)).toMatchObject({ wrong: undefined, cases: [{ job: { key: 'labour head with out' }, hours: 12 }] });
});
