import { beforeAll, describe, expect, test, vi } from 'vitest';
import { createLanguageService, resolveWithin, type LanguageService, type Place } from '../../src/service/index.js';
import { manyFiles, MANY_ROOT } from '../../src/tools/bench/many-files.js';

const COUNT = 1_000;
const { texts, estimates: generated, shops, library } = manyFiles(COUNT);
const estimates = generated.map(({ uri }) => uri);
const sharers = generated.filter(({ shares }) => shares).map(({ uri }) => uri);
const everyFile = [...texts.keys()];

let service: LanguageService;
const totalsOf = (uri: string) => service.weighing(uri).comparison.options.map(({ totals }) => totals.total.likely.toFixed(2));
const change = (uri: string, from: string, to: string) => {
  const text = texts.get(uri) ?? '';
  expect(text.split(from), `${uri} has ${from} once`).toHaveLength(2);
  texts.set(uri, text.replace(from, to));
};
const byFile = (places: readonly Place[]) => places.reduce((counts, { uri }) => counts.set(uri, (counts.get(uri) ?? 0) + 1), new Map<string, number>());
const offsetIn = (uri: string, text: string) => (texts.get(uri) ?? '').indexOf(text) + text.length;

// A second or two where nothing else runs; the build machines do several things at once.
vi.setConfig({ testTimeout: 120_000 });

beforeAll(() => {
  service = createLanguageService({
    read: (uri) => {
      const text = texts.get(uri);
      return text === undefined ? 'missing' : { text };
    },
    resolvePath: (from, written) => resolveWithin(MANY_ROOT, from, written),
    files: () => everyFile,
  });
});

describe('a thousand estimates and the files they share', () => {
  test('are all weighed, with no line that could not be read', () => {
    for (const uri of estimates) {
      const { comparison, problems } = service.weighing(uri);
      expect(problems.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toEqual([]);
      expect(comparison.options).toHaveLength(2);
    }
  });

  test('a rate changed in a shared file changes the estimates that use it; all others stay the very same objects', () => {
    const before = estimates.map((uri) => ({ uri, weighing: service.weighing(uri), totals: totalsOf(uri) }));
    change(shops[2] as string, 'rate mechanical "Mechanical" 126.00', 'rate mechanical "Mechanical" 151.00');
    let changed = 0;
    before.forEach(({ uri, weighing, totals }, i) => {
      if (generated[i]?.shop !== shops[2]) return expect(service.weighing(uri), uri).toBe(weighing);
      changed++;
      const [repair, sell] = totalsOf(uri);
      expect(Number(repair), uri).toBeGreaterThan(Number(totals[0]));
      expect(sell).toBe(totals[1]);
    });
    expect(changed).toBe(COUNT / 4);
  });

  test('and so does a price in the library, for those that use it', () => {
    const before = estimates.map((uri) => service.weighing(uri));
    change(library, '11 L at 4.10 new', '11 L at 5.10 new');
    before.forEach((weighing, i) => expect(service.weighing(estimates[i] as string) === weighing, estimates[i]).toBe(generated[i]?.shares === false));
  });

  test('a name changed back and forth gives the old totals again', () => {
    const before = estimates.slice(0, 40).map(totalsOf);
    change(library, 'labour road-test', 'labour road-tset');
    expect(service.weighing(estimates[1] as string).problems.map(({ code }) => code)).toContain('unknown-name');
    change(library, 'labour road-tset', 'labour road-test');
    expect(estimates.slice(0, 40).map(totalsOf)).toEqual(before);
  });
});

describe('a name that is shared by hundreds of files', () => {
  test('its uses are found from the library and from any estimate, in the same files', () => {
    const fromLibrary = service.references(library, offsetIn(library, 'part cool'), everyFile);
    const counts = byFile(fromLibrary);
    expect(new Set(counts.keys())).toEqual(new Set([library, ...sharers]));
    // Given and used once in the library; in each estimate the pump job uses it.
    expect(counts.get(library)).toBe(2);
    expect(counts.get(sharers[0] as string)).toBe(1);
    const one = sharers[7] as string;
    const fromEstimate = service.references(one, offsetIn(one, 'pump, belt, cool'), everyFile);
    expect(fromEstimate).toHaveLength(fromLibrary.length);
    expect(byFile(fromEstimate)).toEqual(counts);
  });

  test('an estimate without the library means its own line', () => {
    const own = estimates[0] as string;
    expect(new Set(service.references(own, offsetIn(own, 'pump, belt, cool'), everyFile).map(({ uri }) => uri))).toEqual(new Set([own]));
  });

  test('it is renamed in all of them at once, and nothing else changes', () => {
    const edits = service.rename(library, offsetIn(library, 'part cool'), 'antifreeze', everyFile);
    if ('refused' in edits) throw new Error(edits.refused);
    expect(new Set(edits.keys())).toEqual(new Set([library, ...sharers]));
    const totals = estimates.map(totalsOf);
    for (const [uri, list] of edits) {
      const text = texts.get(uri) as string;
      texts.set(uri, [...list].sort((a, b) => b.range.start - a.range.start).reduce((done, { range, text: put }) => done.slice(0, range.start) + put + done.slice(range.end), text));
    }
    expect(estimates.map(totalsOf)).toEqual(totals);
    expect(estimates.flatMap((uri) => service.weighing(uri).problems.filter(({ severity }) => severity === 'error'))).toEqual([]);
    expect(service.references(library, offsetIn(library, 'part anti'), everyFile)).toHaveLength(sharers.length + 2);
  });

  test('is refused where one of a thousand has the new name already', () => {
    expect(service.rename(library, offsetIn(library, 'part anti'), 'belt', everyFile)).toMatchObject({ refused: expect.stringContaining('belt') as string });
  });
});

test('symbols of the whole workspace are found by their words', () => {
  expect(service.workspaceSymbols('stock part 11', everyFile).map(({ place }) => place.uri)).toEqual([library]);
  expect(service.workspaceSymbols('vehicle 777', everyFile).map(({ place }) => place.uri)).toEqual([estimates[777]]);
  expect(service.workspaceSymbols('coolant pump with seal', everyFile)).toHaveLength(COUNT);
  expect(service.workspaceSymbols('no such words', everyFile)).toEqual([]);
});
