import { describe, expect, test } from 'vitest';
import { parse } from '../../../src/language/index.js';
import type { Sources } from '../../../src/estimate/index.js';
import { readClosed, resolvedCases } from '../../../src/weigh/history/index.js';
import { quickCases } from '../../../src/weigh/history/quick-cases.js';
import { BENCH, sources as bench, URI } from '../../history/closed.js';

// Where the few lines of what was clocked leave a doubt, the whole estimate is asked: a wrong time in the shop's own book
// of times would stand there for years.

interface Told {
  readonly text?: string;
  readonly head?: string;
  readonly clocked?: string;
  /** A shared file that the estimate uses. */
  readonly shared?: string;
}

const withFront = BENCH.replace('labour pump', 'access front "Front off"\n  remove 2 h\nlabour pump');
const CLOSED = 'closed for repair on 2026-12-09\n';

function read({ text = BENCH, head = CLOSED, clocked = '  clocked head 12.5 h\n', shared }: Told) {
  const used = shared === undefined ? text : text.replace('use "shop.yard"', 'use "a.yard"\nuse "shop.yard"').replace('do look,', 'do look, seal,');
  const tree = parse('/shop/a.yard', shared ?? '');
  const sources: Sources = { ...bench, treeOf: (uri) => (uri === '/shop/a.yard' ? tree : bench.treeOf(uri)) };
  const all = `${used}${head}${clocked}`;
  return { quick: quickCases(URI, all, sources)?.cases, read: readClosed(URI, all, sources), whole: resolvedCases(URI, all, sources) };
}

describe('what is in doubt is settled by the whole estimate', () => {
  test.each<[string, Told, readonly string[] | string]>([
    ['the number of the form is missing', { text: BENCH.replace('steelyard 1', 'steelyard') }, 'Missing here: the number of the form.'],
    ['the day of the closing is none', { head: 'closed for repair on 2026-13-09\n' }, 'There is no 2026-13-09 in the calendar.'],
    ['a shared file uses what it doesn’t name', { shared: 'steelyard 1\nuse\nlabour seal "Seal" 1 h\n', clocked: '  clocked seal 1.25 h\n' }, ['labour seal']],
    ['work that only another option does', { text: BENCH.replace('labour pump', 'labour spare "Spare" 1 h\nlabour pump').replace('option stop "Leave it"', 'option stop "Leave it"\n  do spare'), clocked: '  clocked spare 2 h\n  clocked head 12.5 h\n' }, ['labour head with out']],
    ['a stage opens more than was clocked, for work that takes it', { text: withFront.replace('11 h with out', '11 h with front').replace('option repair', 'stage look-in "Look inside"\n  do look\n  opens lifted\noption repair'), clocked: '  clocked front 2 h\n  clocked head 12 h\n  clocked pump 4.4 h\n' }, ['access front', 'labour head with front', 'labour pump with lifted']],
    ['a clocked line names nothing', { clocked: '  clocked 3 h\n' }, 'Missing here: the name of a line, or its title in quotes.'],
    ['a clocked line has a name and a title', { clocked: '  clocked head "Dress it" 3 h\n' }, '“head” means nothing at this place of a clocked line.'],
    ['a clocked line has no hours', { clocked: '  clocked head\n' }, 'This line lacks the hours that were clocked.'],
    ['work and a way in have one name', { text: BENCH.replace('labour pump', 'labour out "Out it comes" 3 h\nlabour pump').replace('do look,', 'do look, out,'), clocked: '  clocked out 8 h\n  clocked head 12.5 h\n' }, 'out is the name of a labour and of an access.'],
    ['a way in that no clocked work takes, beside one that does', { text: withFront, clocked: '  clocked front 2 h\n  clocked head 12.5 h\n' }, ['labour head with out']],
    ['work in several ways, of which none was opened', { text: withFront.replace('  takes 9 h\n', '').replace('takes 1 h with out', 'takes 1 h with front'), clocked: '  clocked lifted 2 h\n  clocked head 12.5 h\n' }, ['access lifted', 'labour head with out']],
    ['work in several ways, and only another way in was clocked', { text: withFront.replace('  takes 9 h\n', '').replace('takes 4 h with lifted', 'takes 4 h with front'), clocked: '  clocked lifted 2 h\n  clocked pump 3 h\n' }, ['access lifted', 'labour pump with out']],
    ['work of a shared file has no title', { shared: 'steelyard 1\nlabour seal 1 h\n', clocked: '  clocked seal 1.25 h\n' }, []],
    ['work of a shared file has no hours', { shared: 'steelyard 1\nlabour seal "Seal"\n', clocked: '  clocked seal 1.25 h\n' }, []],
    ['work of a shared file says nothing for one of its ways', { shared: 'steelyard 1\nlabour seal "Seal"\n  takes 2 h\n  takes with lifted\n', clocked: '  clocked seal 1.25 h\n' }, ['labour seal']],
  ])('%s', (_, told, wanted) => {
    const found = read(told);
    expect(found.read.wrong?.why ?? found.read.cases.map(({ job: { key } }) => key)).toEqual(wanted);
    expect(found.read).toEqual(found.whole);
  });

  test('a way in that no clocked work takes leaves the few lines undecided', () => {
    expect(read({ text: withFront, clocked: '  clocked front 2 h\n  clocked head 12.5 h\n' }).quick).toBeUndefined();
  });
});

describe('what is not in doubt', () => {
  test('is not lost by a faulty line that nobody clocked, though the whole estimate may rest on it', () => {
    const found = read({ text: BENCH.replace('labour head', 'labour spare "Nobody did it" 1 q\nlabour head') });
    expect(found.read).toMatchObject({ wrong: undefined, cases: [{ job: { key: 'labour head with out' }, hours: 12.5 }] });
    expect(found.whole.wrong?.why).toBe('This figure has no unit.');
  });

  test.each([
    ['the quickest of those that were open, wherever it stands', BENCH.replace('  takes 9 h\n  takes 4 h with lifted\n  takes 1 h with out\n', '  takes 1 h with out\n  takes 4 h with lifted\n  takes 9 h\n'), '  clocked out 8 h\n  clocked pump 1.1 h\n', 'labour pump with out'],
    ['not one of whose two ways in only one was open', withFront.replace('  takes 1 h with out', '  takes 1 h with lifted, front'), '  clocked lifted 2 h\n  clocked pump 4.2 h\n', 'labour pump with lifted'],
  ])('work in several ways was done in %s', (_, text, clocked, key) => {
    const found = read({ text, clocked });
    expect(found.quick?.map(({ job }) => job.key)[1]).toBe(key);
    expect(found.read).toEqual(found.whole);
  });

  test('is settled without the day of the closing: the case has none', () => {
    const found = read({ head: 'closed for repair\n' });
    expect(found.quick).toMatchObject([{ job: { key: 'labour head with out' }, on: undefined }]);
    expect(found.read).toEqual(found.whole);
  });

  test('is settled by the few lines, though a shared file has work without a name', () => {
    const found = read({ shared: 'steelyard 1\nlabour "Sweep" 1 h\nlabour "Sweep again" 1 h\nlabour seal "Seal" 1 h\n', clocked: '  clocked seal 1.25 h\n' });
    expect(found.quick?.map(({ job: { key } }) => key)).toEqual(['labour seal']);
    expect(found.read).toEqual(found.whole);
  });

  test('is settled by the few lines, though something about them is advised', () => {
    // A line indented to nobody's column is read as belonging to the nearest above: a warning.
    const found = read({ clocked: '    clocked head 12.5 h\n  clocked valves 3 h\n' });
    expect(found.quick?.map(({ job: { key } }) => key)).toEqual(['labour head with out', 'labour valves']);
    expect(found.read).toEqual(found.whole);
  });
});
