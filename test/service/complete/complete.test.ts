import { describe, expect, test } from 'vitest';
import { ONCE } from '../../../src/service/complete/line-start.js';
import { EITHER_OR } from '../../../src/service/complete/in-line.js';
import { allKinds, fileKinds, units } from '../../../src/vocabulary/index.js';
import { after, BENCH, cursorIn, labels, URI } from './cursor.js';
import { serviceOver } from '../../support/fixture.js';

/** A fixture with its cursor, the label of the offer that is taken, and the lines from there on. */
const taken: readonly (readonly [string, string, string])[] = [
  ['  do pu$0', 'pump', '  do pump'],
  ['  do pump, $0', 'head', '  do pump, head'],
  ['  fit se$0al, bolts', 'seal', '  fit seal, bolts'],
  ['labour x "X"\n  takes 4 $0', 'h', '  takes 4 h'],
  ['labour x "X"\n  takes 4 $0', 'min', '  takes 4 min'],
  ['labour x "X"\n  takes 3 / 4 / 6 $0', 'h', '  takes 3 / 4 / 6 h'],
  ['labour x "X"\n  takes 4 h $0', 'with', '  takes 4 h with lifted'],
  ['labour x "X"\n  takes 4 h with $0', 'out', '  takes 4 h with out'],
  ['labour x "X"\n  takes 4 h wi$0 out', 'with', '  takes 4 h with out'],
  ['part x "X" 12 at 4.10 ne$0', 'new', 'part x "X" 12 at 4.10 new'],
  ['part x "X" 12 at 4.10 new a$0', 'arrives', 'part x "X" 12 at 4.10 new arrives 2 d'],
  ['part x "X" 12 $0', 'at', 'part x "X" 12 at 64.30'],
  ['part x "X" 12 $0 4.10', 'at', 'part x "X" 12 at 4.10'],
  ['part x "X" 11 $0', 'L', 'part x "X" 11 L at 64.30'],
  ['part x "X" 11 $0 at 4.10', 'L', 'part x "X" 11 L at 4.10'],
  ['part x "X" 12 at $0', 'cost', 'part x "X" 12 at cost 64.30'],
  ['part x "X" 12 at $0 4.10', 'cost', 'part x "X" 12 at cost 4.10'],
  ['part x "Bolts" $0', '8 at 4.00 new', 'part x "Bolts" 8 at 4.00 new'],
  ['fee x "X" 5 $0', '%', 'fee x "X" 5 %'],
  ['fee x "X" 5% of $0', 'parts', 'fee x "X" 5% of parts'],
  ['sublet y "Y" 3.00\n  back i$0', 'back in', '  back in 4 d'],
  ['sublet y "Y" 3.00 back $0', 'back in', 'sublet y "Y" 3.00 back in 4 d'],
  ['sublet y "Y" 3.00 ba$0', 'back in', 'sublet y "Y" 3.00 back in 4 d'],
  ['  way $0', 'in-car', '  way in-car'],
  ['labour a "A" 2 h cl$0', 'class', 'labour a "A" 2 h class bench'],
  ['labour a "A" 2 h class $0', 'wiring', 'labour a "A" 2 h class wiring'],
  ['access z "Z"\n  needs $0', 'fill', '  needs fill'],
  ['labour a "A" 2 h\n  because $0', 'low', '  because low'],
  ['  send $0', 'face', '  send face'],
  ['  charge t$0', 'tow', '  charge tow'],
  ['consider $0', 'head', 'consider head'],
  ['finding f "F"\n  compression 171 168 $0', 'psi', '  compression 171 168 psi'],
  ['finding f "F"\n  leakage 8 9 $0', '%', '  leakage 8 9 %'],
  ['finding f "F"\n  rules $0', 'rules out', '  rules out fix'],
  ['part x "X" 5.00 new\n  warranty $0', '12 mo', '  warranty 12 mo'],
  ['part x "X" 5.00 used\n  $0', 'core', '  core 600.00'],
  ['vehicle "V"\n  odo$0', 'odometer', '  odometer 131400 mi'],
  ['veh$0', 'vehicle', 'vehicle "2013 Harrow Pilgrim 3.0 V6, transverse"'],
  ['$0', 'part …', 'part head-bolts "Head bolts, tightened to yield" 8 at 5.85 new arrives 2 d'],
  ['  $0', 'part …', '  part "Head bolts, tightened to yield" 8 at 5.85 new arrives 2 d'],
  ['$0', 'labour …', 'labour pump-2 "Coolant pump: replace"\n  takes 9.0 h\n  takes 4.5 h with lifted\n  takes 1.6 h with out'],
  ['  part "P" 9.00 used\n    $0', 'core …', '    core 600.00 due 30 d\n      assemble 1.5 h\n      keeps "Oil filter housing" less 40.00'],
  ['vehicle "V"\n\t$0', 'built', '\tbuilt 2012-11'],
];

describe('what is accepted', () => {
  test.each(taken)('%j takes %j', (marked, label, line) => {
    expect(after(BENCH + marked, label)).toBe(line);
  });

  test('a labour snippet without ways in has one time', () => {
    expect(after('steelyard 1\n$0', 'labour …')).toBe('labour pump "Coolant pump: replace"\n  takes 9.0 h');
  });

  test('the first line', () => {
    expect(after('$0', 'steelyard')).toBe('steelyard 1');
    expect(labels('steelyard 1\n$0')).not.toContain('steelyard');
  });

  test('line ends are those of the file', () => {
    expect(after('steelyard 1\r\n$0\r\n', 'access …')).toContain('subframe"\r\n  remove');
  });

  test('what lines bring stands behind their names', () => {
    const detail = (marked: string, label: string) => cursorIn(BENCH + marked).offers.find((one) => one.label === label)?.detail;
    expect(detail('  do $0', 'pump')).toBe('Coolant pump — 900.00 for 9.0 h in the car; 200.00 for 2.0 h with out');
    expect(detail('  fit $0', 'seal')).toBe('Seal — 11.70');
    expect(detail('  send $0', 'face')).toBe('Face — 30.00');
    expect(detail('  way $0', 'out')).toBe('Engine out — 1,100.00 for 11.0 h, remove and refit');
    expect(detail('labour a "A" 1 h class $0', 'wiring')).toBe('Wiring — 120.00 an hour');
    expect(detail('access z "Z"\n  needs $0', 'fill')).toBe('Vacuum filler — owned');
    expect(detail('finding f "F"\n  rules out $0', 'fix')).toBe('Fix — 945.00');
  });
});

/** A fixture with its cursor, and what must not be offered there. */
const absent: readonly (readonly [string, readonly string[]])[] = [
  ['  do pump, $0', ['pump', 'fix', 'seal']],
  ['  do $0, pump', ['pump']],
  ['  worth 100\n  $0', ['worth']],
  ['  warranty 3 mo\n  $0', ['warranty', 'takes', 'vehicle', 'shop', 'remove', 'option']],
  ['$0', ['shop', 'steelyard', 'takes', 'remove', 'rate', 'core', 'worth']],
  ['vehicle "V"\n  worth 1\n$0', ['vehicle', 'vehicle …', 'shop']],
  ['  part "P" 9.00 used\n    core 5.00\n    $0', ['core', 'core …']],
  ['labour x "X"\n  takes 4 $0', ['with', 'd', 'L', '%', 'class']],
  ['labour x "X" 4 h with out $0', ['with']],
  ['labour x "X"\n  needs $0', ['x']],
  ['labour x "X" 2 h\n  class $0', ['pump', 'out']],
  ['part x "X" 12 at 4.10 new $0', ['new', 'used', 'cost', 'at', 'L', 'h']],
  ['part x "X" cost 4.10 $0', ['cost', 'at']],
  ['part x "X" $0 new', ['new', 'used']],
  ['part x "X" 4.10 new arrives 3 d $0', ['arrives']],
  ['part x "X" 4.10 new $0\n  arrives 3 d', ['arrives']],
  ['access z "Z"\n  includes $0', ['z']],
];

describe('what is not offered', () => {
  test.each(absent)('%j', (marked, missing) => {
    const offered = labels(BENCH + marked);
    for (const one of missing) expect(offered).not.toContain(one);
  });

  test.each([
    ['in a comment', '  do pump  # see $0'], ['in a comment of its own', '# $0'], ['in a title', 'part x "Co$0"'], ['in a title that is still open', 'part x "Co$0'],
    ['in a figure', '  worth 40$0'], ['behind a text', 'part x "X"$0'], ['for a new name', 'part $0'], ['for a new title', 'part x $0'], ['below a fact', '  do pump\n    $0'],
    ['below an unknown word', 'prt x\n  $0'], ['behind a whole fact', '  do pump $0'], ['where it would take the lines below', 'shop "S"\n$0\n  currency USD'], ['before a line', '$0  do pump'],
    ['for the last day of a coverage', 'coverage c "C"\n  until $0'],
  ])('anything %s', (_, marked) => {
    expect(labels(BENCH + marked)).toEqual([]);
  });

  test('a name that two kinds of a slot have, since nobody knows which is meant', () => {
    expect(labels(`${BENCH}sublet seal "Seal" 4.00\nlabour z "Z" 1 h\n  uses $0`)).toEqual(['bolts', 'face']);
  });
});

describe('everything the vocabulary knows', () => {
  test('every kind of line is offered at the left edge of an empty estimate, or below another', () => {
    const top = labels('$0');
    for (const kind of fileKinds) expect(top).toContain(kind.word);
    for (const kind of allKinds.filter((one) => one.name !== 'required' || fileKinds.includes(one))) {
      for (const child of kind.children) {
        const head = chain(kind.word);
        expect(labels(`steelyard 1\n${head.text}${'  '.repeat(head.depth)}$0`)).toEqual(expect.arrayContaining([child.word, ...[...kind.leads.keys()].filter((lead) => !head.text.includes(lead))]));
      }
    }
  });

  test('every unit is offered somewhere', () => {
    const places = ['part x "X" 1 $0', 'labour x "X" 1 $0', 'vehicle "V"\n  odometer 1 $0', 'finding f "F"\n  compression 1 $0'];
    const offered = new Set(places.flatMap((one) => labels(`steelyard 1\n${one}`)));
    for (const { word } of units) expect(offered).toContain(word);
  });

  test('a kind that may stand once is one that the checker refuses twice', () => {
    for (const kind of ONCE) {
      const text = kind.word === 'core' ? 'steelyard 1\npart x "X" 1.00 new\n  core 1.00\n  core 1.00\n' : `${kind.word === 'steelyard' ? '' : 'steelyard 1\n'}${kind.example}\n${kind.example}\n`;
      const { service } = serviceOver({ 'estimate.yard': text });
      expect(service.diagnostics(URI).map(({ code }) => code), kind.word).toContain('only-once');
    }
  });

  test('slots of which one is said are slots that lines have', () => {
    for (const key of EITHER_OR.flat()) expect(allKinds.some((kind) => key in kind.fields)).toBe(true);
  });
});

/** The heads that a line of a kind stands below, with it. */
function chain(word: string): { readonly text: string; readonly depth: number } {
  const kind = allKinds.find((one) => one.word === word) as (typeof allKinds)[number];
  const head = kind.example.split('\n')[0] as string;
  const plain = head.replace(/("[^"]*").*$/, '$1');
  if (fileKinds.includes(kind)) return { text: `${plain}\n`, depth: 1 };
  const parent = chain((allKinds.find((one) => one.children.includes(kind)) as (typeof allKinds)[number]).word);
  return { text: `${parent.text}${'  '.repeat(parent.depth)}${plain}\n`, depth: parent.depth + 1 };
}

describe('paths', () => {
  const files = { 'shop.yard': 'steelyard 1\n', 'lists/parts.yard': 'steelyard 1\n', 'notes.txt': '' };

  test.each([
    ['use $0', 'use "shop.yard"'], ['use "$0', 'use "shop.yard"'], ['use "sh$0op"', 'use "shop.yard"'], ['use "$0"', 'use "shop.yard"'],
  ])('%j', (marked, line) => {
    expect(after(`steelyard 1\n${marked}`, 'shop.yard', files)).toBe(line);
  });

  test('are relative, without the file itself, those in use, and other files', () => {
    expect(labels('steelyard 1\nuse "$0"', files)).toEqual(['shop.yard', 'lists/parts.yard']);
    expect(labels('steelyard 1\nuse "shop.yard"\nuse "$0"', files)).toEqual(['lists/parts.yard']);
    expect(labels('steelyard 1\nuse "shop.yard$0"', files)).toContain('shop.yard');
    expect(labels('steelyard 1\nuse "x" $0', files)).toEqual([]);
    expect(labels('steelyard 1\nuse "$0"')).toEqual([]);
  });
});
