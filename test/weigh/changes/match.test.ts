import { describe, expect, test } from 'vitest';
import { sameLines } from '../../../src/weigh/changes/index.js';
import { sideOf } from '../../changes/both.js';
import { HEAD, option, sorts } from './told.js';

// Which line is which, where several would do. Rules of our own.

describe('what is written the same otherwise', () => {
  test('work of another class is other work, though the hours are the same', () => {
    expect(sorts(option('labour "Strip" 1.5 h class fine'), option('labour "Hoist up" 1.5 h class bench'))).toEqual(['came Hoist up', 'went Strip']);
    expect(sorts(option('labour "Strip" 1.5 h class fine'), option('labour "Hoist up" 1.5 h class fine'))).toEqual(['renamed Strip > Hoist up']);
  });

  test('the order in which a line says things doesn’t tell lines apart', () => {
    expect(sorts(option('part "Clip" 3.00 new arrives 2 d'), option('part "Wholly else" arrives 2 d new 3.00'))).toEqual(['renamed Clip > Wholly else']);
  });

  test('two things the same, but no figure among them, make no line the same', () => {
    expect(sorts(option('labour "Try it out" done last caution fuel'), option('labour "Hoist up" done last caution fuel'))).toEqual(['came Hoist up', 'went Try it out']);
  });
});

describe('titles before likeness', () => {
  test('of lines without a name the same title goes before another one that says the same', () => {
    // ‘hose’ and ‘hoses’ share 3 pairs of 3 and 4: 0.86, and with all figures equal 0.90; the same title with none equal is 0.67.
    expect(sorts(option('part "Hose" 3.00 new'), option('part "Hoses" 3.00 new', 'part "Hose" 44.00 used'))).toEqual(['came Hoses', 'moved Hose > Hose; condition new > used; price 3.00 > 44.00']);
  });

  test('a line that gets a name is looked for by what it says before its title', () => {
    const chances = (...lines: readonly string[]) => option('labour "Look" 1 h', ...lines.map((line) => `  chance ${line}`));
    expect(sorts(chances('"It breaks" 10% comeback'), chances('broken "It breaks" 30%', '"Wholly else" 10% comeback'))).toEqual(['came It breaks', 'renamed It breaks > Wholly else']);
  });
});

describe('lines that are equally alike', () => {
  // The titles share 3 of 4 pairs, the condition is one of two facts: (2 × 0.75 + 0.5) / 3 = 0.67, for each of them.
  const [two, three, four] = ['part "Hose 2" 4.00 new', 'part "Hose 3" 5.00 new', 'part "Hose 4" 6.00 new'];

  test.each([[two, three, four], [three, two, four], [four, three, two], [three, four, two]])('the first by what they say, in whichever order they stand: %s; %s; %s', (...lines) => {
    expect(sorts(option('part "Hose 1" 3.00 new'), option(...lines))).toEqual(['came Hose 3', 'came Hose 4', 'moved Hose 1 > Hose 2; price 3.00 > 4.00']);
  });
});

describe('very many lines of a kind', () => {
  // Single characters have no pairs of letters in common.
  const parts = (count: number) => Array.from({ length: count - 1 }, (_, i) => `part "${String.fromCodePoint(0x4e00 + i)}" ${i + 1}.00 new`);

  test.each([[150, 'moved Hose, upper > Hoses, upper; price 900.00 > 950.00'], [151, undefined]])('on one side alone, %i of them: beyond 150 nothing is looked for by likeness', (count, wanted) => {
    const found = sorts(option(...parts(count), 'part "Hose, upper" 900.00 new'), option('part "Hoses, upper" 950.00 new'));
    expect(found.find((one) => one.includes('>'))).toBe(wanted);
  });
});

test('a chance with a name that stands below another option is the same under another title', () => {
  const at = (a: string, b: string) => `option a "A"\n  labour "Look" 1.0 h\n${a}option b "B"\n  labour "Look" 1.0 h\n${b}`;
  // Of ‘headiscracked’ and ‘headcracked’ 12 and 10 pairs, 9 are shared: 0.82; with the percentage equal it is 0.88.
  expect(sorts(at('  chance cracked "Head is cracked" 10%\n', ''), at('', '  chance cracked "Head cracked" 10%\n'))).toEqual(['elsewhere Head is cracked > Head cracked']);
  expect(sorts(at('  chance "Head is cracked" 10%\n', ''), at('', '  chance "Head cracked" 10%\n'))).toEqual(['came Head cracked', 'went Head is cracked']);
});

describe('the lines of two versions that are one line', () => {
  const records = (text: string) => {
    const { service, uri } = sideOf(HEAD + text, 'one');
    return service.weighing(uri).resolved.records;
  };
  const [before, after] = [records('part clip "Clip" 3.00 new\npart hose "Hose" 9.00 new\n'), records('part seal "Seal" 20.00 used\npart bracket "Clip" 3.00 new\n')];
  const named = (all: typeof before, name: string) => all.find((record) => record.name?.name === name) as (typeof before)[number];

  test('are the same object, under another name too; what only one version has is none', () => {
    const line = sameLines(before, after);
    expect(line(named(before, 'clip'))).toBeDefined();
    expect(line(named(before, 'clip'))).toBe(line(named(after, 'bracket')));
    expect(line(named(before, 'hose'))).toBeUndefined();
    expect(line(named(after, 'seal'))).toBeUndefined();
  });

  test('nobody knows a line of a third text', () => {
    expect(sameLines(before, after)(named(records('part clip "Clip" 3.00 new\n'), 'clip'))).toBeUndefined();
  });
});
