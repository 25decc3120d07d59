import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse, parseSome } from '../../src/language/index.js';
import { closedEstimate } from '../../src/tools/bench/closed-estimates.js';
import { quickCases } from '../../src/weigh/history/quick-cases.js';
import { mayBeClosed, readClosed, resolvedCases } from '../../src/weigh/history/index.js';
import { BENCH, sources, URI } from './closed.js';

/** What is taken from a closing of the bench estimate: key, hours for one, hours estimated. */
function taken(below: string, head = 'closed for repair on 2026-12-09', text = BENCH): unknown[] {
  const { cases, wrong } = readClosed(URI, `${text}${head}\n${below}`, sources);
  if (wrong !== undefined) return [`${wrong.line}: ${wrong.why}`];
  return cases.map(({ job, hours, estimated }) => [job.key, Number(hours.toFixed(4)), estimated]);
}

describe('what a closing adds to the book', () => {
  test.each<[string, string, unknown[]]>([
    ['work with the only way it has', '  clocked head 12.5 h', [['labour head with out', 12.5, 11]]],
    ['work of a shared file', '  clocked look 1.2 h', [['labour look', 1.2, 1.5]]],
    ['a way in, opened and closed as one', '  clocked out 8 h', [['access out', 8, 7.5]]],
    ['minutes as hours', '  clocked head 690 min', [['labour head with out', 11.5, 11]]],
    ['one of several pieces', '  clocked valves 6 h', [['labour valves', 0.5, 1 / 3]]],
    ['work by its title', '  clocked "Dress it" 2.4 h', [['labour "Dress it"', 2.4, 2]]],
    ['work that turned up', '  clocked "Drill it out" 1 h', [['labour "Drill it out" with out', 1, 1.5]]],
    ['work in the way that was clocked', '  clocked pump 4.4 h\n  clocked lifted 3 h', [['labour pump with lifted', 4.4, 4], ['access lifted', 3, 2.5]]],
    ['work in the quickest of those that a clocked way gives', '  clocked out 8 h\n  clocked pump 1.1 h', [['access out', 8, 7.5], ['labour pump with out', 1.1, 1]]],
    // The head needs the engine out, so the plan has it out, and the pump is done with that.
    ['work in the planned way, where none was clocked', '  clocked pump 1.3 h', [['labour pump with out', 1.3, 1]]],
    ['nothing for what was not clocked', '  clocked head 0 h', []],
    ['nothing for what the option does not do', '  clocked "Put it back" 1 h\n  clocked look 2 h', [['labour look', 2, 1.5]]],
    ['no money', '  paid coolant 44.00\n  billed 900.00', []],
  ])('%s', (_, below, wanted) => {
    expect(taken(`${below}\n`)).toEqual(wanted);
  });

  test('nothing where no option was done', () => {
    expect(taken('  clocked head 12 h\n', 'closed on 2026-12-09')).toEqual([]);
  });

  test('nothing, and why, where something on which it rests can’t be read', () => {
    expect(taken('  clocked head 12\n')).toEqual([expect.stringContaining('24: ')]);
    expect(taken('  clocked haed 12 h\n')).toEqual([expect.stringMatching(/^24: There is no labour or access called haed/)]);
    expect(taken('  clocked pump 1 h\n', undefined, BENCH.replace('  takes 9 h', '  takes 9 x'))).toEqual([expect.stringContaining('11: ')]);
    expect(taken('  clocked head 12 h\n', undefined, BENCH.replace('steelyard 1', 'steelyard 2'))).toHaveLength(1);
  });

  test('the same whatever stands beside the work', () => {
    const beside = 'vehicle "Van"\n  odometer 12 furlongs\ninspect x\npart "No price" new\n';
    expect(taken('  clocked head 12.5 h\n  clocked out 8 h\n', undefined, BENCH + beside)).toEqual([['labour head with out', 12.5, 11], ['access out', 8, 7.5]]);
  });

  test('the line on which the hours stand, and the day', () => {
    expect(readClosed(URI, `${BENCH}closed for repair on 2026-12-09\n\n  # noted at once\n  clocked head 12 h\n`, sources).cases).toMatchObject([{ line: 26, on: '2026-12-09' }]);
  });
});

describe('reading only what is clocked', () => {
  const generated = Array.from({ length: 40 }, (_, i) => closedEstimate(i + 1));
  const quick = generated.filter((text) => quickCases(URI, text, sources) !== undefined);

  test('says the same as resolving the estimate, on generated estimates', () => {
    for (const text of quick) expect(readClosed(URI, text, sources)).toEqual(resolvedCases(URI, text, sources));
  });

  test('is enough for most of them', () => {
    expect(quick.length).toBeGreaterThan(0.6 * generated.length);
  });

  test('says the same of the sample that is closed', () => {
    const folder = path.join(import.meta.dirname, '../closing');
    const text = readFileSync(path.join(folder, 'pilgrim-v6.yard'), 'utf8');
    const shop = parse('/shop/shop.yard', readFileSync(path.join(folder, 'shop.yard'), 'utf8'));
    const own = { ...sources, treeOf: () => shop };
    expect(readClosed(URI, text, own)).toEqual(resolvedCases(URI, text, own));
    expect(readClosed(URI, text, own).cases.map(({ job }) => job.key)).toEqual(['labour swap with engine-out', 'access engine-out', 'labour accept', 'labour road-test', 'labour "Drill out and cut the thread anew" with engine-out']);
  });

  /** Lines of the bench, each in turn lost, doubled, set in or out, or cut off. */
  test('says the same of damaged estimates', () => {
    const lines = `${BENCH}closed for repair on 2026-12-09\n  clocked out 8 h\n  clocked pump 1.1 h\n  clocked "Dress it" 2 h\n`.split('\n');
    const damages: readonly ((line: string) => string[])[] = [() => [], (line) => [line, line], (line) => [`  ${line}`], (line) => [line.trimStart()], (line) => [line.slice(0, -3)]];
    for (const damage of damages) {
      lines.forEach((_, at) => {
        const text = lines.flatMap((line, i) => (i === at ? damage(line) : [line])).join('\n');
        const quick = quickCases(URI, text, sources);
        const whole = resolvedCases(URI, text, sources);
        // Resolving looks at more lines than are clocked, and may find one of the others wrong.
        if (quick !== undefined && whole.wrong === undefined) expect(readClosed(URI, text, sources), text).toEqual(whole);
      });
    }
  });
});

test('blocks that are read alone are those of the whole file', () => {
  const texts = ['pilgrim-v6', 'tarn-inline', 'shop'].map((name) => readFileSync(path.join(import.meta.dirname, '../../samples', `${name}.yard`), 'utf8'));
  for (const text of [...texts, `\ufeff${BENCH}`, BENCH.replaceAll('\n', '\r\n')]) {
    const whole = parse(URI, text);
    const some = parseSome(URI, text, (first) => ['labour', 'option', 'steelyard'].includes(first));
    const wanted = whole.blocks.filter((block) => /^\ufeff?(?:labour|option|steelyard)\s/.test(block.text));
    expect(some.blocks.map((block) => block.text)).toEqual(wanted.map((block) => block.text));
    expect(some.blocks.map((block, i) => text.startsWith(block.text, some.starts[i]))).toEqual(wanted.map(() => true));
  }
});

test('texts that may be closed', () => {
  expect(['closed for x', 'a\nclosed\n', 'a\r\nclosed on 2026-12-09'].map(mayBeClosed)).toEqual([true, true, true]);
  expect(['  closed sunday', '# closed for x', 'closed-for', 'closedown', ''].map(mayBeClosed)).toEqual([false, false, false, false, false]);
});

describe('with a stage', () => {
  const staged = BENCH.replace('option repair', 'labour strip "Take the front off"\n  takes 3 h\n  takes 2 h with lifted\n  takes 1 h with out\nstage tear-down "Look inside"\n  do strip\n  opens lifted\noption repair').replace('head, valves', 'valves');

  test('its work is done with what it opens, whatever is opened later', () => {
    expect(taken('  clocked strip 2.5 h\n  clocked out 8 h\n', undefined, staged)).toEqual([['labour strip with lifted', 2.5, 2], ['access out', 8, 7.5]]);
  });

  test('what it opens is open for other work, clocked or not', () => {
    expect(taken('  clocked pump 4.4 h\n', undefined, staged)).toEqual([['labour pump with lifted', 4.4, 4]]);
    expect(taken('  clocked pump 4.4 h\n  clocked lifted 2 h\n', undefined, staged)).toEqual([['labour pump with lifted', 4.4, 4], ['access lifted', 2, 2.5]]);
  });
});
