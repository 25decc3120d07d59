import { describe, expect, test } from 'vitest';
import { parse, type Tree } from '../../../src/language/index.js';
import type { Sources } from '../../../src/estimate/index.js';
import { readClosed, resolvedCases } from '../../../src/weigh/history/index.js';
import { quickCases } from '../../../src/weigh/history/quick-cases.js';
import { BENCH, sources as bench, URI } from '../../history/closed.js';

const CLOSED = 'closed for repair on 2026-12-09\n';

/** The bench estimate, or a changed one, beside other files of the same folder. */
function sourcesWith(files: Readonly<Record<string, string>>): Sources {
  const trees = new Map(Object.entries(files).map(([name, text]): [string, Tree] => [`/shop/${name}`, parse(`/shop/${name}`, text)]));
  return { ...bench, treeOf: (uri) => trees.get(uri) ?? bench.treeOf(uri) };
}

interface Told {
  readonly text?: string;
  readonly head?: string;
  readonly clocked?: string;
  readonly files?: Readonly<Record<string, string>>;
}

/** What is read, which has to be what resolving the whole estimate says. */
function keys({ text = BENCH, head = CLOSED, clocked = '  clocked head 12.5 h\n', files = {} }: Told): readonly string[] {
  const all = `${text}${head}${clocked}`;
  const sources = sourcesWith(files);
  const found = readClosed(URI, all, sources);
  expect(found).toEqual(resolvedCases(URI, all, sources));
  return found.wrong === undefined ? found.cases.map(({ job: { key }, hours }) => `${key}: ${Number(hours.toFixed(3))}`) : ['wrong'];
}

const WHOLE = ['labour head with out: 12.5'];

describe('a closed file says the same read quickly as resolved', () => {
  test.each<[string, Told, readonly string[]]>([
    ['as it is', {}, WHOLE],
    ['with a stage, which opens more than was clocked', { text: BENCH.replace('option repair', 'stage look-in "Look inside"\n  do look\n  opens lifted\noption repair'), clocked: '  clocked pump 4 h\n' }, ['labour pump with out: 4']],
    ['with a stage and a way in clocked', { text: BENCH.replace('option repair', 'stage look-in "Look inside"\n  do look\n  opens lifted\noption repair'), clocked: '  clocked pump 4 h\n  clocked out 8 h\n' }, ['labour pump with out: 4', 'access out: 8']],
    ['with a stage in a shared file', { text: BENCH.replace('use "shop.yard"', 'use "shop.yard"\nuse "stage.yard"'), files: { 'stage.yard': 'steelyard 1\nstage look-in "Look inside"\n  labour "Borescope" 1 h\n' } }, WHOLE],
    ['without an option named', { head: 'closed on 2026-12-09\n' }, []],
    ['closed for an option that is not there', { head: 'closed for rebuild on 2026-12-09\n' }, ['wrong']],
    ['closed twice', { head: `closed for stop on 2026-12-01\n${CLOSED}` }, ['wrong']],
    ['with a shared file that is missing', { text: BENCH.replace('use "shop.yard"', 'use "shop.yard"\nuse "other.yard"') }, ['wrong']],
    ['with shared files that use each other', { text: BENCH.replace('use "shop.yard"', 'use "a.yard"\nuse "shop.yard"'), files: { 'a.yard': 'steelyard 1\nuse "b.yard"\n', 'b.yard': 'steelyard 1\nuse "a.yard"\nlabour seal "Seal" 1 h\n' } }, WHOLE],
    ['with a shared file that uses another', { text: BENCH.replace('use "shop.yard"', 'use "a.yard"\nuse "shop.yard"').replace('do look,', 'do look, seal,'), files: { 'a.yard': 'steelyard 1\nuse "b.yard"\n', 'b.yard': 'steelyard 1\nlabour seal "Seal" 1 h\n' }, clocked: '  clocked seal 1.25 h\n' }, ['labour seal: 1.25']],
    ['with two pieces of work of one name', { text: BENCH.replace('labour head', 'labour head "Front head" 9 h with out\nlabour head') }, ['wrong']],
    ['with a name that the shared file has too', { text: BENCH.replace('labour head', 'labour look "Look" 7 h\nlabour head'), clocked: '  clocked look 6 h\n' }, ['wrong']],
    ['with two options of one name', { text: BENCH.replace('option stop', 'option repair') }, ['wrong']],
    ['of another edition of the language', { text: BENCH.replace('steelyard 1', 'steelyard 9') }, ['wrong']],
    ['without saying which edition', { text: BENCH.replace('steelyard 1\n', '') }, WHOLE],
    ['with a title that stands twice: the first line is meant', { text: BENCH.replace('"Rear head"', '"Dress it"'), clocked: '  clocked "Dress it" 3 h\n' }, ['labour head with out: 3']],
    ['clocked twice', { clocked: '  clocked head 5 h\n  clocked head 6 h\n' }, ['wrong']],
    ['with ways in that go round in a circle', { text: BENCH.replace('  remove 1 h\n', '  includes out\n  remove 1 h\n'), clocked: '  clocked out 7 h\n  clocked head 12.5 h\n' }, ['wrong']],
    ['with a way in that none of the work takes', { text: BENCH.replace('labour pump', 'access front "Front off"\n  remove 2 h\nlabour pump'), clocked: '  clocked front 2 h\n' }, []],
    ['with work in two ways of which none is clocked', { clocked: '  clocked pump 9 h\n' }, ['labour pump with out: 9']],
    ['with work in two ways for the same way in', { text: BENCH.replace('  takes 4 h with lifted', '  takes 4 h with out'), clocked: '  clocked pump 3 h\n  clocked out 8 h\n' }, ['wrong']],
    ['with work that has no hours', { text: BENCH.replace('"Rear head" 11 h with out', '"Rear head"') }, ['wrong']],
    ['with work in a way that is not there', { text: BENCH.replace('11 h with out', '11 h with front') }, ['wrong']],
    ['with advice only', { text: BENCH.replace('option stop', '\n\noption stop') }, WHOLE],
  ])('%s', (_, told, wanted) => {
    expect(keys(told)).toEqual(wanted);
  });
});

describe('a closed file is settled by its few lines, and not resolved', () => {
  const front = 'access front "Front off"\n  includes lifted\n  remove 2 h\n';
  const stand = BENCH.replace('labour pump', `${front}labour pump`);

  test.each<[string, Told]>([
    ['where each clocked job has one time', { clocked: '  clocked head 12.5 h\n  clocked valves 3.5 h\n' }],
    ['where work of the option itself is clocked by its title', { clocked: '  clocked "Dress it" 3 h\n' }],
    ['where a way in is clocked, and a job that takes it', { clocked: '  clocked out 8 h\n  clocked head 12.5 h\n' }],
    ['where a job of several times has one with the way in that was clocked', { clocked: '  clocked lifted 2 h\n  clocked pump 4.5 h\n' }],
    ['where it has several, the quicker', { clocked: '  clocked out 8 h\n  clocked pump 1.5 h\n' }],
    ['where a dearer way in was clocked that gives the one that a job names', { text: stand, clocked: '  clocked front 2.5 h\n  clocked pump 4.5 h\n' }],
    ['with shared files that use others', { text: BENCH.replace('use "shop.yard"', 'use "a.yard"\nuse "shop.yard"').replace('do look,', 'do look, seal,'), files: { 'a.yard': 'steelyard 1\nuse "b.yard"\n', 'b.yard': 'steelyard 1\nlabour seal "Seal" 1 h\n' }, clocked: '  clocked seal 1.25 h\n' }],
    ['with lines of no name in a shared file', { text: BENCH.replace('use "shop.yard"', 'use "a.yard"\nuse "shop.yard"'), files: { 'a.yard': 'steelyard 1\npart "Rag" 1.00 new\nlabour seal "Seal" 1 h\n' } }],
    ['with faults in lines that it doesn’t need', { text: BENCH.replace('option stop', 'part "Rag" one new\noption stop') }],
    ['with advice on them', { text: BENCH.replace('labour head', 'labour spare "Nobody does it" 1 h\nlabour head') }],
    ['with another piece of work that has the same title in another option', { text: BENCH.replace('"Put it back"', '"Dress up"'), clocked: '  clocked "Dress it" 3 h\n' }],
  ])('%s', (_, told) => {
    const { text = BENCH, head = CLOSED, clocked = '  clocked head 12.5 h\n', files = {} } = told;
    expect(keys(told).length).toBeGreaterThan(0);
    expect(quickCases(URI, `${text}${head}${clocked}`, sourcesWith(files))?.cases.map(({ job: { key } }) => key)).toEqual(keys(told).map((line) => line.replace(/: [\d.]+$/, '')));
  });

  test('a day, minutes, and several of one piece', () => {
    const { cases = [] } = quickCases(URI, `${BENCH}${CLOSED}  clocked valves 210 min\n`, sourcesWith({})) ?? {};
    // 12 at 20 min: 20 min estimated for one, and 17.5 min clocked.
    expect(cases.map(({ hours, estimated, on }) => [hours * 60, (estimated ?? 0) * 60, on])).toEqual([[17.5, 20, '2026-12-09']]);
  });

  test('what was done is found on its line', () => {
    const found = readClosed(URI, `${BENCH}${CLOSED}  clocked head 12.5 h\n  clocked valves 3 h\n`, sourcesWith({}));
    const line = (words: string) => `${BENCH}${CLOSED}  clocked head 12.5 h\n  clocked valves 3 h\n`.split('\n').findIndex((one) => one.includes(words)) + 1;
    expect(found.cases.map((one) => one.line)).toEqual([line('clocked head'), line('clocked valves')]);
  });
});
