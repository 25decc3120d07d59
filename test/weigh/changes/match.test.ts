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

  test('a line that gets a name is looked for by its title before another one that says the same', () => {
    const chances = (...lines: readonly string[]) => option('labour "Look" 1 h', ...lines.map((line) => `  chance ${line}`));
    expect(sorts(chances('"It breaks" 10% comeback'), chances('broken "It breaks" 30%', '"Wholly else" 10% comeback'))).toEqual(['came Wholly else', 'moved It breaks > It breaks; comeback comeback > -; percent 10% > 30%']);
    expect(sorts(option('part "Clip" 3.00 new', 'part "Hose" 4.00 new'), option('part clip "Clip" 4.00 new', 'part hose "Hose" 3.00 new'))).toEqual(['moved Clip > Clip; price 3.00 > 4.00', 'moved Hose > Hose; price 4.00 > 3.00']);
  });

  test('of two with its title, a line that gets a name is the one that says the same; of equals, the one without a name stays without', () => {
    expect(sorts(option('part "Bolt" 5.00 new'), option('part bolt "Bolt" 5.00 new', 'part "Bolt" 6.00 used'))).toEqual(['came Bolt', 'renamed Bolt > Bolt']);
    expect(sorts(option('part "Bolt" 5.00 new'), option('part bolt "Bolt" 5.00 new', 'part "Bolt" 5.00 new'))).toEqual(['came Bolt']);
  });

  test('a line that gets a name and stands at the left edge, with another that says the same where it stood', () => {
    expect(sorts(option('part "Hose, upper" 30.00 new'), `part upper "Hose, upper" 30.00 new\n${option('fit upper', 'part "Hose, lower" 30.00 new')}`)).toEqual(['came Hose, lower', 'elsewhere Hose, upper > Hose, upper']);
    // With another price, what stands where it stood and says the same is it.
    expect(sorts(option('part "Hose, upper" 30.00 new'), `part upper "Hose, upper" 31.00 new\n${option('fit upper', 'part "Hose, lower" 30.00 new')}`)).toEqual(['came Hose, upper', 'renamed Hose, upper > Hose, lower']);
  });

  test.each([[150], [400]])('%i lines of a kind without names: titles tell them apart', (count) => {
    const parts = (price: number) => option(...Array.from({ length: count }, (_, i) => `part "Part ${i}" ${i === 70 ? price : 5}.00 new`));
    expect(sorts(parts(71), parts(90))).toEqual(['moved Part 70 > Part 70; price 71.00 > 90.00']);
  });
});

describe('names that went from line to line', () => {
  const two = (one: string, other: string) => `labour ${one} "Strip" 1.0 h\nlabour ${other} "Refit" 3.0 h\n  after ${one}\noption a "A"\n  do ${one}\noption b "B"\n  do ${one}, ${other}\n`;

  test('two lines that swap their names, and all that names them, are the same lines', () => {
    expect(sorts(two('x', 'y'), two('y', 'x'))).toEqual(['renamed Refit > Refit', 'renamed Strip > Strip']);
  });

  test('of lines that say the same, who names them tells whether they swapped names or titles', () => {
    const jobs = (one: string, other: string, first: string, second: string) => `labour x "${one}" 1.0 h\nlabour y "${other}" 1.0 h\noption a "A"\n  do ${first}\noption b "B"\n  do ${second}\n`;
    expect(sorts(jobs('Strip', 'Refit', 'x', 'y'), jobs('Refit', 'Strip', 'y', 'x'))).toEqual(['renamed Refit > Refit', 'renamed Strip > Strip']);
    expect(sorts(jobs('Strip', 'Refit', 'x', 'y'), jobs('Refit', 'Strip', 'x', 'y'))).toEqual(['renamed Refit > Strip', 'renamed Strip > Refit']);
  });

  test('a line that still says a name that swapped means another line now', () => {
    const waits = (one: string, other: string, means: string) => `${two(one, other)}  do check\nlabour check "Check" 1.0 h\n  after ${means}\n`;
    expect(sorts(waits('x', 'y', 'x'), waits('y', 'x', 'x'))).toEqual(['moved Check > Check; after x > x', 'renamed Refit > Refit', 'renamed Strip > Strip']);
    expect(sorts(waits('x', 'y', 'x'), waits('y', 'x', 'y'))).toEqual(['renamed Refit > Refit', 'renamed Strip > Strip']);
  });

  test('a name that the next line gets', () => {
    const parts = (one: string, other: string) => `part ${one} "Seal" 10.00 new\npart ${other} "Ring" 20.00 new\n${option(`fit ${one}, ${other}`)}`;
    expect(sorts(parts('seal', 'ring'), parts('ring', 'washer'))).toEqual(['renamed Ring > Ring', 'renamed Seal > Seal']);
  });

  test('three in a round, also where one of them says something else now', () => {
    const parts = (names: readonly string[], last: string) => `part ${names[0] ?? ''} "Seal" 10.00 new\npart ${names[1] ?? ''} "Ring" 20.00 new\npart ${names[2] ?? ''} "Clip" ${last} new\n${option(`fit ${names.join(', ')}`)}`;
    expect(sorts(parts(['x', 'y', 'z'], '30.00'), parts(['y', 'z', 'x'], '30.00'))).toEqual(['renamed Clip > Clip', 'renamed Ring > Ring', 'renamed Seal > Seal']);
    expect(sorts(parts(['x', 'y', 'z'], '30.00'), parts(['y', 'z', 'x'], '31.00'))).toEqual(['moved Clip > Clip; price 30.00 > 31.00', 'renamed Ring > Ring', 'renamed Seal > Seal']);
  });

  test('a line copied under another name, and the first one changed: the copy is new', () => {
    const parts = (price: string, more: string) => `part seal "Seal" ${price} new\n${more}${option(`fit seal${more === '' ? '' : ', ring'}`)}`;
    expect(sorts(parts('10.00', ''), parts('11.00', 'part ring "Seal" 10.00 new\n'))).toEqual(['came Seal', 'moved Seal > Seal; price 10.00 > 11.00']);
  });

  test('options that swap their names, told by what they bring in; their titles alone swapped, the names decide', () => {
    const options = (one: string, other: string, first: string, second: string, price = '100.00') => `part p "Pump" ${price} new\npart q "Unit" 200.00 new\noption ${one} "${first}"\n  fit p\noption ${other} "${second}"\n  fit q\n`;
    const before = options('a', 'b', 'Mend it', 'Swap it');
    expect(sorts(before, options('b', 'a', 'Mend it', 'Swap it'))).toEqual(['renamed Mend it > Mend it', 'renamed Swap it > Swap it']);
    expect(sorts(before, options('b', 'a', 'Mend it', 'Swap it', '110.00'))).toEqual(['moved Pump > Pump; price 100.00 > 110.00', 'renamed Mend it > Mend it', 'renamed Swap it > Swap it']);
    expect(sorts(before, options('a', 'b', 'Swap it', 'Mend it'))).toEqual(['renamed Mend it > Swap it', 'renamed Swap it > Mend it']);
  });

  test('an option goes and another one gets its name', () => {
    const options = (...all: readonly (readonly [string, string, string])[]) => all.map(([name, title, part]) => `option ${name} "${title}"\n  part "${part}" 100.00 new\n`).join('');
    expect(sorts(options(['a', 'Mend it', 'P'], ['b', 'Swap it', 'Q']), options(['a', 'Swap it', 'Q']))).toEqual(['renamed Swap it > Swap it', 'went Mend it']);
  });

  test('an option that changes name and title is the one with all the same below it', () => {
    const options = (name: string, title: string, more: string) => `part p "Pump" 100.00 new\noption ${name} "${title}"\n  fit p\n${more}option b "B"\n  part "Q" 200.00 new\n`;
    expect(sorts(options('a', 'Mend it', ''), options('m', 'Rebuild where it sits', ''))).toEqual(['renamed Mend it > Rebuild where it sits']);
    expect(sorts(options('a', 'Mend it', ''), options('m', 'Rebuild where it sits', '  part "R" 3.00 new\n'))).toEqual(['came Rebuild where it sits', 'went Mend it']);
  });

  test('options of one title under other names are those that bring in more of the same', () => {
    expect(sorts('option a "Mend it"\n  part "P" 100.00 new\noption b "Mend it"\n  part "Q" 200.00 new\n', 'option x "Mend it"\n  part "Q" 200.00 new\noption y "Mend it"\n  part "P" 110.00 new\n')).toEqual([
      'moved P > P; price 100.00 > 110.00', 'renamed Mend it > Mend it', 'renamed Mend it > Mend it',
    ]);
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
