import { describe, expect, test } from 'vitest';
import { changed } from '../../changes/both.js';
import { HEAD, option, sorts } from './told.js';

// Which line of the new version is which line of the old one: by name, by title, by what it says, by likeness. Rules of our own.

describe('lines with a name', () => {
  const part = (line: string) => `${option(`fit ${line.split(' ')[0] ?? ''}`)}part ${line}\n`;

  test('stay the same whatever else they say', () => {
    expect(sorts(part('clip "Clip, spring" 3.00 new'), part('clip "Quite another thing" 44.00 used'))).toEqual(['moved Clip, spring > Quite another thing; condition new > used; price 3.00 > 44.00']);
  });

  test('are the same under another name with the same title', () => {
    expect(sorts(part('clip "Clip, spring" 3.00 new'), part('bracket "Clip, spring" 3.00 new'))).toEqual(['renamed Clip, spring > Clip, spring']);
  });

  test('keep to their name where another line takes over their words', () => {
    const both = (a: string, b: string) => `${option('fit one, two')}part one "${a}" 3.00 new\npart two "${b}" 4.00 new\n`;
    expect(sorts(both('Clip', 'Hose'), both('Hose', 'Clip'))).toEqual(['renamed Clip > Hose', 'renamed Hose > Clip']);
  });

  test('of two kinds are never the same', () => {
    expect(sorts(`${option('send skim')}sublet skim "Skim" 30.00\n`, `${option('charge skim')}fee skim "Skim" 30.00\n`)).toEqual(['came Skim', 'went Skim']);
  });
});

describe('lines with a title alone', () => {
  test('of the same title are told apart by what they say', () => {
    expect(sorts(option('part "Bolt" 5.00 new', 'part "Bolt" 7.00 used'), option('part "Bolt" 7.00 used', 'part "Bolt" 6.00 new'))).toEqual(['moved Bolt > Bolt; price 5.00 > 6.00']);
  });

  test('of the same title, one more of them: the one that says the same stays', () => {
    expect(sorts(option('part "Bolt" 5.00 new'), option('part "Bolt" 6.00 new', 'part "Bolt" 5.00 new'))).toEqual(['came Bolt']);
  });

  test('that say the same two things, with a figure, are the same under another title', () => {
    expect(sorts(option('part "Clip" 3.00 new'), option('part "Wholly else" 3.00 new'))).toEqual(['renamed Clip > Wholly else']);
  });

  test('that say only one thing the same are not: much work takes 1.5 h', () => {
    expect(sorts(option('labour "Strip" 1.5 h'), option('labour "Hoist up" 1.5 h'))).toEqual(['came Hoist up', 'went Strip']);
  });

  test('that say two things without a figure the same are not', () => {
    const note = (title: string) => option(`labour "${title}" done last`, 'part "Seal" 3.00 new');
    expect(sorts(note('Try it out'), note('Hoist up'))).toEqual(['came Hoist up', 'went Try it out']);
  });

  test('are not told apart by content that two of them share', () => {
    expect(sorts(option('part "Clip" 3.00 new', 'part "Hose" 3.00 new'), option('part "Wholly else" 3.00 new', 'part "Hose" 3.00 new'))).toEqual(['renamed Clip > Wholly else']);
    expect(sorts(option('part "Clip" 3.00 new', 'part "Hose" 3.00 new'), option('part "Wholly else" 3.00 new', 'part "Mount" 3.00 new'))).toEqual(['came Mount', 'came Wholly else', 'went Clip', 'went Hose']);
  });

  // Two thirds of Dice's coefficient of the titles, one third of the share of equal figures; from 0.6 on it is the same line.
  // ‘abcdef’ and ‘abcdxy’ share ab, bc, cd of five pairs each: 0.6.
  test('are the same from 0.6 likeness on', () => {
    // 2/3 of 0.6 is 0.4; of price, condition, arrives and warranty two are equal, a sixth: 0.57.
    expect(sorts(option('part "abcdef" 3.00 new arrives 2 d warranty 1 mo'), option('part "abcdxy" 4.00 new arrives 2 d warranty 2 mo'))).toEqual(['came abcdxy', 'went abcdef']);
    // Three of four: 0.65.
    expect(sorts(option('part "abcdef" 3.00 new arrives 2 d warranty 1 mo'), option('part "abcdxy" 4.00 new arrives 2 d warranty 1 mo'))).toEqual(['moved abcdef > abcdxy; price 3.00 > 4.00']);
  });

  test('of several that are alike the likest is the one', () => {
    expect(sorts(option('part "Hose, upper" 30.00 new'), option('part "Hose, lower" 31.00 new', 'part "Hoses, upper" 32.00 new'))).toEqual(['came Hose, lower', 'moved Hose, upper > Hoses, upper; price 30.00 > 32.00']);
  });
});

describe('lines that stand elsewhere', () => {
  test('keep what stands below them', () => {
    const job = (where: 'a' | 'b', percent: number) => {
      const lines = `  labour "Strip" 1.5 h\n    chance "It breaks" ${percent}%\n      part "Stud" 4.00 new\n`;
      return `option a "A"\n  labour "Look" 1.0 h\n${where === 'a' ? lines : ''}option b "B"\n  labour "Look" 1.0 h\n${where === 'b' ? lines : ''}`;
    };
    expect(sorts(job('a', 10), job('b', 20))).toEqual(['elsewhere Strip > Strip', 'moved It breaks > It breaks; percent 10% > 20%']);
  });

  test('need the same title or name: alike is not enough', () => {
    const at = (a: string, b: string) => `option a "A"\n  labour "Look" 1.0 h\n${a}option b "B"\n  labour "Look" 1.0 h\n${b}`;
    expect(sorts(at('  part "Hose, upper" 30.00 new\n', ''), at('', '  part "Hoses, upper" 30.00 new\n'))).toEqual(['came Hoses, upper', 'went Hose, upper']);
    expect(sorts(at('  part "Hose, upper" 30.00 new\n', ''), at('', '  part "Hose, upper" 35.00 new\n'))).toEqual(['elsewhere Hose, upper > Hose, upper; price 30.00 > 35.00']);
  });

  test('a job that got a name and stands at the left edge is the same job', () => {
    expect(sorts(option('labour "Strip" 1.5 h'), `${option('do strip')}labour strip "Strip" 1.5 h\n`)).toEqual(['elsewhere Strip > Strip']);
  });
});

test('there is one vehicle and one estimate, whatever they are called', () => {
  const vehicle = (line: string) => `vehicle ${line}\n${option('labour "Look" 1.0 h')}`;
  expect(sorts(vehicle('"Wren van"\n  odometer 90000 mi\n  worth 5000.00'), vehicle('"Other words"\n  odometer 91000 mi\n  worth 6000.00'))).toEqual(['moved Wren van > Other words; odometer 90000 mi > 91000 mi; worth 5000.00 > 6000.00']);
});

test('more than 150 lines of a kind that nothing else tells are not compared for likeness', () => {
  // Single characters have no pairs of letters in common.
  const parts = (count: number, first: number, title: string, price: number) => option(...Array.from({ length: count - 1 }, (_, i) => `part "${String.fromCodePoint(first + i)}" ${price + i}.00 new`), `part "${title}" ${price + 700}.00 new`);
  const same = (count: number) => changed(HEAD + parts(count, 0x4e00, 'Hose, upper', 1), HEAD + parts(count, 0x5e00, 'Hoses, upper', 1000)).changes.filter(({ before, after }) => before !== undefined && after !== undefined).map(({ after }) => after?.title);
  expect(same(150)).toEqual(['Hoses, upper']);
  expect(same(151)).toEqual([]);
});

describe('what a line says', () => {
  test.each<[string, string, string, readonly string[]]>([
    ['hours on the head are one of its times', 'labour "Strip" 1.5 h', 'labour "Strip"\n    takes 1.5 h', []],
    ['another time on the head', 'labour "Strip" 1.5 h', 'labour "Strip"\n    takes 90 min', ['moved Strip > Strip; hours 1.5 h > 90 min']],
    ['one of several times', 'labour "Strip"\n    takes 1.5 h\n    takes 1.0 h with up', 'labour "Strip"\n    takes 1.0 h with up\n    takes 2.0 h', ['moved Strip > Strip; hours 1.5 h > 2.0 h']],
    ['the time with a way in', 'labour "Strip"\n    takes 1.5 h\n    takes 1.0 h with up', 'labour "Strip"\n    takes 1.5 h\n    takes 0.9 h with up', ['moved Strip > Strip; hours with up 1.0 h > 0.9 h']],
    ['the ways in of a time in any order', 'labour "Strip"\n    takes 1.0 h with up, off', 'labour "Strip"\n    takes 1.0 h with off, up', []],
    ['another way in for the same hours', 'labour "Strip"\n    takes 1.0 h with up', 'labour "Strip"\n    takes 1.0 h with off', ['moved Strip > Strip; hours with off - > 1.0 h; hours with up 1.0 h > -']],
    ['a list in any order', 'labour "Strip" 1.0 h caution lifting, fuel', 'labour "Strip" 1.0 h caution fuel, lifting', []],
    ['a list with one more', 'labour "Strip" 1.0 h caution lifting', 'labour "Strip" 1.0 h caution fuel, lifting', ['moved Strip > Strip; caution lifting > fuel, lifting']],
    ['spaces within', 'part "Seal" 2 at 3.00 new from "The  store"', 'part "Seal"  2  at 3.00 new from "The  store"', []],
    ['a figure written otherwise', 'part "Seal" 3.00 new', 'part "Seal" 3 new', []],
    ['a range', 'labour "Strip" 1.0 / 1.5 / 2.0 h', 'labour "Strip" 1.0 / 1.5 / 3.0 h', ['moved Strip > Strip; hours 1.0 / 1.5 / 2.0 h > 1.0 / 1.5 / 3.0 h']],
    ['what is below it without a title', 'part "Box" 90.00 rebuilt\n    core 50.00\n      assemble 1.0 h', 'part "Box" 90.00 rebuilt\n    core 60.00\n      assemble 1.5 h', ['moved Box > Box; core assemble 1.0 h > 1.5 h; core charge 50.00 > 60.00']],
    ['what is kept of a core', 'part "Box" 90.00 rebuilt\n    core 50.00\n      keeps "Lid" less 4.00\n      keeps "Tap" less 6.00', 'part "Box" 90.00 rebuilt\n    core 50.00\n      keeps "Tap" less 7.00\n      keeps "Lid" less 4.00', ['moved Box > Box; keeps less 6.00 > 7.00']],
  ])('%s', (_, before, after, wanted) => {
    const ways = 'access up "Up"\n  remove 0.5 h\naccess off "Off"\n  remove 0.6 h\n';
    expect(sorts(ways + option(before), ways + option(after))).toEqual(wanted);
  });

  test('a name means the line that has it, whatever that is called now', () => {
    const job = (name: string) => `access ${name} "Up on the lift"\n  remove 0.5 h\nlabour strip "Strip"\n  takes 3.0 h\n  takes 1.0 h with ${name}\nlabour fit "Fit" 1.0 h\n  after strip\noption a "A"\n  do strip, fit\n  way ${name}\n`;
    expect(sorts(job('up'), job('lifted'))).toEqual(['renamed Up on the lift > Up on the lift']);
  });

  test('a list that loses a line that went says nothing by it', () => {
    const jobs = (second: string) => `labour fit "Fit" 1.0 h\n  after strip${second === '' ? '' : ', look'}\nlabour strip "Strip" 3.0 h\n${second}option a "A"\n  do strip, fit${second === '' ? '' : ', look'}\n`;
    expect(sorts(jobs('labour look "Look" 0.5 h\n'), jobs(''))).toEqual(['went Look']);
  });
});
