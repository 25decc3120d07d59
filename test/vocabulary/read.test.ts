// How a line is read: its name, its title, what it says, and what stands below it; and that one fault gives one message.
import { describe, expect, test } from 'vitest';
import { jsonOf, messagesOf, recordsOf, said } from './said.js';

const broken = (text: string) => recordsOf(text).map((record) => record.broken);

describe('a name', () => {
  test('may be a word of the language, where a title follows', () => {
    expect(jsonOf('part new "P" 1 new\n')).toMatchObject({ name: 'new', title: 'P', condition: 'new' });
    expect(jsonOf('part arrives "P" 1 new\n')).toMatchObject({ name: 'arrives', title: 'P' });
    expect(said('part new "P" 1 new\npart arrives "P" 1 new\n')).toEqual([]);
  });

  test('is no word that says something else', () => {
    expect(said('part cost 5.00 new\n')).toEqual([['title-missing', 'part']]);
    expect(said('part new 5.00\n')).toEqual([['title-missing', 'part']]);
    expect(jsonOf('part new 5.00\n')).toEqual({ kind: 'part' });
    expect(jsonOf('closed\n  clocked pump 2 h\n  clocked "Pump" 2 h\n')).toMatchObject({ clocked: [{ line: 'pump' }, { title: 'Pump' }] });
  });

  test.each<readonly [text: string, ...says: string[]]>([
    ['pump-', 'pump-', 'pump'], ['pump---', 'pump---', 'pump'], ['Pump_2', 'Pump_2', 'pump-2'], ['__a__b__', '__a__b__', 'a-b'], ['a.-.b', 'a.-.b', 'a-b'], ['-9x', '-9x', 'x'], ['_', '_'], ['2nd', '2nd'], ['2_nd', '2_nd'],
  ])('%s can’t be one', (written, ...says) => {
    expect(said(`part ${written} "P" 1 new\n`)).toEqual([['bad-name', ...says]]);
  });

  test('that ends with a hyphen is understood all the same; any other bad one spoils its line', () => {
    expect([jsonOf('part pump- "P" 1 new\n'), broken('part pump- "P" 1 new\n')]).toMatchObject([{ name: 'pump-', price: { likely: '1' } }, [false]]);
    expect([jsonOf('part pump_2 "P" 1 new\n'), broken('part pump_2 "P" 1 new\n')]).toEqual([{ kind: 'part', title: 'P' }, [true]]);
  });

  test('is asked for where it is needed', () => {
    expect(said('option "O"\n')).toEqual([['name-missing', 'option']]);
    expect(said('option 5 "O"\n')).toEqual([['name-missing', 'option']]);
    expect(said('option\n')).toEqual([['name-missing', 'option']]);
    expect(said('option рump "O"\n').map(([code]) => code)).toEqual(['strange-character']);
    expect(broken('option "O"\noption рump "O"\n')).toEqual([true, true]);
  });
});

describe('a title', () => {
  test('is asked for where it is needed', () => {
    for (const text of ['option new-way\n', 'part 5.00 new\n', 'note\n', 'note x\n', 'use shop.yard\n', 'use\n']) expect(said(text)).toEqual([['title-missing', text.split(/\s/)[0]]]);
    expect(said('note ‘x\n').map(([code]) => code)).toEqual(['strange-character']);
    expect(broken('note\nnote x\noption new-way\n')).toEqual([true, true, true]);
  });

  test('comes right behind the name', () => {
    expect(said('part p q "P" 1 new\n')).toEqual([['unknown-word', 'q']]);
    expect(said('part p 5 "P" new\n')).toEqual([['unknown-word', '5']]);
    expect(said('part p , "P" 1 new\n')).toEqual([['title-missing', 'part']]);
    expect(said('part p arrives "P"\n')).toEqual([['title-missing', 'part']]);
    expect(messagesOf('part p q "P" 1 new\n')[0]?.instead).toContain('the title in quotes');
    expect(broken('part p q "P" 1 new\n')).toEqual([true]);
  });

  test('without its closing quote spoils its line, and a fact the line that it stands below', () => {
    expect([said('note "a\n'), broken('note "a\n')]).toEqual([[['open-text', '"a']], [true]]);
    expect([said('vehicle "V"\n  engine "x\n'), broken('vehicle "V"\n  engine "x\n')]).toEqual([[['open-text', '"x']], [true]]);
    expect(broken('vehicle "V"\n  engine "x"\n')).toEqual([false]);
  });
});

describe('figures without a word in front', () => {
  test('a count stands before at', () => {
    expect(jsonOf('part p "P" 5 at 3.00 new\n')).toMatchObject({ quantity: { likely: '5' }, price: { likely: '3' } });
    expect(jsonOf('part p "P" 11 L at cost 3.00 new\n')).toMatchObject({ quantity: { likely: '11', unit: 'L' }, cost: { likely: '3' } });
    expect(jsonOf('labour l "L" 2 at 3 h\n')).toMatchObject({ count: { likely: '2' }, hours: { likely: '3' } });
  });

  test.each<readonly [text: string, ...says: string[]]>([
    ['part p "P" 5 at', 'at'], ['part p "P" 5 at new', 'new'], ['part p "P" 5 at "x"', '"x"'],
  ])('%s lacks the figure for one', (text, marked) => {
    expect([said(`${text}\n`), broken(`${text}\n`)]).toEqual([[['something-missing', marked]], [true]]);
    expect(messagesOf(`${text}\n`)[0]?.instead).toContain('12 at 5.85');
  });

  test.each<readonly [text: string, ...says: string[]]>([
    ['part p "P" 64.30 71.00 new', 'extra-figure', '71.00'], ['part p "P" 5 at 3.00 4.00', 'extra-figure', '4.00'], ['part p "P" 2 at 3 at 4', 'extra-figure', '3'], ['labour l "L" 3 h 4 h', 'extra-figure', '4 h'],
    ['labour l "L" 3 4 h', 'unit-missing', '3'], ['labour l "L" 2 at 3', 'unit-missing', '3'], ['part p "P" 11 L new', 'wrong-unit', 'L'], ['part p "P" 3 h', 'wrong-unit', 'h'], ['labour l "L" 5 %', 'wrong-unit', '%'],
    ['note "N" 5', 'unknown-word', '5'], ['started 5', 'unknown-word', '5'],
  ])('%s', (text, ...says) => {
    expect([said(`${text}\n`), broken(`${text}\n`)]).toEqual([[says], [true]]);
  });
});

describe('the first thing that can’t be read ends a line', () => {
  test.each<readonly [text: string, ...says: string[]]>([
    ['part p "P" 1 new junk 5 nwe', 'unknown-word', 'junk'], ['part p "P" 1 new "x" junk', 'unknown-word', '"x"'], ['part p "P" 1 new arrives 1 d arrives 2 d junk', 'said-twice', 'arrives'],
    ['part p "P" cost 5 cost 6 new', 'said-twice', 'cost'], ['finding f "F" seen x', 'unknown-word', 'seen'], ['finding f "F" seen by x seen by y', 'said-twice', 'seen by'],
  ])('%s', (text, ...says) => {
    expect([said(`${text}\n`).map(([code, marked]) => [code, marked]), broken(`${text}\n`)]).toEqual([[says], [true]]);
  });

  test('of two words for one thing the second is marked, and never offered as what was meant', () => {
    expect(said('part p "P" 1 new used\n')).toEqual([['unknown-word', 'used']]);
    expect(messagesOf('part p "P" 1 new used\n')[0]?.instead).toMatch(/^What can follow here: cost, arrives/);
    expect(messagesOf('part p "P" 1 junk\n')[0]?.instead).toContain('new, aftermarket, rebuilt, used');
  });

  test('a strange character has its message already', () => {
    expect(said('part p "P" ‘new\n').map(([code]) => code)).toEqual(['strange-character']);
    expect(said('vehicle "V"\n  worth 5 ‘\n').map(([code]) => code)).toEqual(['strange-character']);
    expect(broken('part p "P" ‘new\nvehicle "V"\n  worth 5 ‘\n')).toEqual([true, true]);
  });
});

describe('lines below', () => {
  test('say more of the line above, in several lines where it is a list', () => {
    expect(jsonOf('labour l "L"\n  needs a\n  needs b, c\n')).toMatchObject({ needs: ['a', 'b', 'c'] });
    expect(jsonOf('labour l "L" needs a\n  needs b\n')).toMatchObject({ needs: ['a', 'b'] });
    expect(said('vehicle "V"\n  worth 1\n  worth 2\n')).toEqual([['said-twice', 'worth']]);
    expect(jsonOf('vehicle "V"\n  worth 1\n  worth 2\n')).toMatchObject({ worth: { likely: '1' } });
  });

  test.each<readonly [text: string, ...says: string[]]>([
    ['vehicle "V"\n  worth 1 2', 'unknown-word', '2'], ['labour l "L"\n  needs a b', 'unknown-word', 'b', 'a, b'], ['vehicle "V"\n  odometre 5', 'unknown-fact', 'odometre', 'odometer'],
    ['vehicle "V"\n  takes 5 h', 'unknown-fact', 'takes'], ['vehicle "V"\n  part p', 'unknown-fact', 'part'], ['vehicle "V"\n  "x"', 'unknown-fact', '"x"'], ['vehicle "V"\n  , x', 'something-missing', ','],
    ['finding f "F"\n  seen', 'unknown-fact', 'seen'], ['vehicle "V"\n  worth', 'something-missing', 'worth'],
  ])('%j spoils it', (text, ...says) => {
    expect([said(`${text}\n`), broken(`${text}\n`)]).toEqual([[says], [true]]);
  });

  test('a second thing in a list is said to need a comma; behind one figure nothing comes', () => {
    expect(messagesOf('labour l "L"\n  needs a b\n')[0]?.instead).toBe('Write a comma between them: a, b');
    expect(messagesOf('labour l "L"\n  needs a "b"\n')[0]?.instead).not.toContain('a comma');
    expect(messagesOf('labour l "L"\n  class a b\n')[0]?.instead).toContain('Remove it');
  });

  test('nothing stands below a fact, which itself is read', () => {
    expect([said('vehicle "V"\n  worth 1\n    worth 2\n'), broken('vehicle "V"\n  worth 1\n    worth 2\n')]).toEqual([[['nothing-below', 'worth']], [false]]);
    expect(messagesOf('vehicle "V"\n  worth 1\n    odometer 2 mi\n')[0]?.what).toContain('below worth');
    expect(said('vehicle "V"\n  worth 1\n    # a comment\n')).toEqual([]);
  });

  test('that can’t be told apart are left out; the others stand', () => {
    const text = 'closed\n  clockd a 1 h\n  clocked b 2 h\n';
    expect(jsonOf(text)).toMatchObject({ clocked: [{ line: 'b' }] });
    expect([said(text), broken(text)]).toEqual([[['unknown-fact', 'clockd', 'clocked']], [true]]);
    // A line below that is broken itself spoils nothing above it.
    expect(broken('closed\n  clocked b 2h\n')).toEqual([false]);
  });

  test('with an indentation that can’t be told have one message', () => {
    expect(said('shop "S"\n\trate a 1.00\n  junk b 2.00\n').map(([code]) => code)).toEqual(['mixed-indent']);
    expect(said('vehicle "V"\n  worth 1\n \t odometer 5 mi\n').map(([code]) => code)).toEqual(['mixed-indent']);
  });
});

describe('a line that starts with no word of its place', () => {
  test.each<readonly [text: string, ...says: string[]]>([
    ['prat p "P"', 'unknown-kind', 'prat', 'part'], ['Part p "P"', 'unknown-kind', 'Part', 'part'], ['"x" part', 'unknown-kind', '"x"'], ['5 part', 'unknown-kind', '5'], [', part', 'something-missing', ','],
    ['clocked pump 2 h', 'unknown-kind', 'clocked'], ['overrun 5%', 'unknown-kind', 'overrun'], ['toString x', 'unknown-kind', 'toString'],
  ])('%s', (text, ...says) => {
    expect([said(`${text}\n`), recordsOf(`${text}\n`)]).toEqual([[says], []]);
  });

  test('is told where it belongs', () => {
    expect(messagesOf('clocked pump 2 h\n')[0]?.instead).toContain('a fact of closed');
    expect(messagesOf('odometer 5 mi\n')[0]?.instead).toContain('a fact of vehicle');
    expect(messagesOf('vehicle "V"\n  takes 5 h\n')[0]?.instead).toContain('belongs below labour');
    expect(messagesOf('xyzzy\n')[0]?.instead).toContain('Start with one of: steelyard, use, shop');
    expect(messagesOf('vehicle "V"\n  xyzzy\n')[0]?.instead).toContain('What can stand here: vin, engine');
    expect(messagesOf('note "N"\n  xyzzy\n')[0]?.instead).toContain('Nothing stands below note');
  });

  test('is told where a fact of two words belongs, by the first of them', () => {
    expect(messagesOf('seen by borescope\n')[0]?.instead).toContain('a fact of finding');
    expect(messagesOf('shop "S"\n  put back 1 h\n')[0]?.instead).toContain('belongs below stage');
    expect(messagesOf('finding f "F"\n  seen\n')[0]?.instead).toContain('What can stand here: seen by, compression');
  });

  test('of a strange character has its message already', () => {
    expect(said('‘part\n').map(([code]) => code)).toEqual(['strange-character']);
  });
});
