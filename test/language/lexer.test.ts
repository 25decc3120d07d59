import { describe, expect, test } from 'vitest';
import { parse, rangeIn, type Block, type Comment, type Problem, type Statement, type Token } from '../../src/language/index.js';

/** A token written out: its kind, its text, where it starts and ends in its block, and whether it lacks its closing quote. */
type Written = readonly [kind: Token['kind'], text: string, start: number, end: number, open?: boolean];

const blockOf = (text: string, at = 0): Block => parse('a.yard', text).blocks[at] as Block;
const writtenOf = (statement: Statement | undefined): readonly Written[] | undefined =>
  statement?.tokens.map(({ kind, text, start, end, open }) => (open === undefined ? [kind, text, start, end] : [kind, text, start, end, open]));
const firstOf = (text: string): readonly Written[] | undefined => writtenOf(blockOf(text).statements[0]);
const codesOf = ({ problems }: Block): readonly string[] => problems.map(({ code }) => code);
const placeOf = ({ code, at }: Problem): readonly [string, number, number] => [code, at.start, at.end];

describe('a run between spaces is one token, and its shape says which', () => {
  const shapes: Readonly<Partial<Record<Token['kind'], readonly string[]>>> = {
    // Letters, digits and hyphens behind a letter: the first and the last letter of the alphabet, both large and small.
    word: ['a', 'z', 'A', 'Z', 'az', 'AZ', 'za', 'ZA', 'USD', 'rear-head', 'rear-', 'bank2', 'b-2-c', 'V8', 'x9', 'x0'],
    // Digits with at most one point, which has a digit on either side.
    number: ['0', '9', '12', '007', '7.5', '64.30', '2026', '2026.11', '99999999999999'],
    // ISO 8601: a calendar date in the extended form, or a month of a year; years of four digits, months and days of two. The
    // lexer knows shapes only, so a month or a day that no calendar has is for a later room.
    date: ['2026-11', '2026-11-24', '0000-00', '9999-99-99'],
    mixed: [
      // Nearly dates: a digit missing or too many, parts missing or too many, another sign.
      '2026-1', '2026-1-2', '2026-11-2', '2026-1-24', '026-11-24', '26-11', '12026-11', '12026-11-24', '2026-111', '2026-11-244', '2026-11-24-1', '2026-11-',
      '2026-11-24-', '2026--11', '2026-', '-2026-11', '2026-11-24.', '2026-11.5', '2026.11-24', '2026-11-24T08', '2026-nov', '2026-11x', '2026:11:24',
      // Nearly numbers.
      '7.', '.5', '.', '..', '1.2.3', '1..2', '-4', '+4', '4-', '12-3', '-', '--', '7.5h', '7h', '5e3', '5z', '5Z', '5a', '5A', '=5', '(5)', '5!', '5~', '!', '~',
      // Commas between digits stay inside, wherever the thousands are; what it means is for a later room.
      '1,200', '1,200.00', '1,200,300', '1,2', '1,2,3', '12,34.5', '1.5,2',
      // A vehicle identification number that starts with a digit, and names with signs that names don't have.
      '1M8GDM9AXKP042788', 'shop.yard', 'a.', 'rear_head', 'a~', 'a!', 'a(b)', 'don\'t', '_a', '-a', '@a', '[a', '`a', '{a', 'a@', 'a[', 'a`', 'a{', 'a:b', 'a;b', 'a\\b', '\\',
    ],
  };
  const rows = Object.entries(shapes).flatMap(([kind, runs]) => runs.map((run) => [run, kind] as const));

  test.each(rows)('%s is a %s', (run, kind) => {
    const block = blockOf(`part ${run}\n`);
    expect(writtenOf(block.statements[0])).toEqual([['word', 'part', 0, 4], [kind, run, 5, 5 + run.length]]);
    expect(codesOf(block)).toEqual([]);
  });

  test.each(rows)('%s is a %s at the start of a line and at the end of a file too', (run, kind) => {
    expect(firstOf(run)).toEqual([[kind, run, 0, run.length]]);
  });
});

describe('a run ends', () => {
  const rows: readonly (readonly [why: string, line: string, tokens: readonly Written[]])[] = [
    ['at a space', 'a b', [['word', 'a', 0, 1], ['word', 'b', 2, 3]]],
    ['at a tab', 'a\tb', [['word', 'a', 0, 1], ['word', 'b', 2, 3]]],
    ['at tabs and spaces in any order', 'a \t\t b\t', [['word', 'a', 0, 1], ['word', 'b', 5, 6]]],
    ['at a quote', 'a"b"', [['word', 'a', 0, 1], ['text', 'b', 1, 4]]],
    ['at a comment', 'a#b', [['word', 'a', 0, 1]]],
    ['at a slash', 'a/b', [['word', 'a', 0, 1], ['mark', '/', 1, 2], ['word', 'b', 2, 3]]],
    ['at a slash between figures', '1150/1350/2100', [['number', '1150', 0, 4], ['mark', '/', 4, 5], ['number', '1350', 5, 9], ['mark', '/', 9, 10], ['number', '2100', 10, 14]]],
    ['at a percent sign', '8.25%', [['number', '8.25', 0, 4], ['mark', '%', 4, 5]]],
    ['behind a percent sign anew', '5%h', [['number', '5', 0, 1], ['mark', '%', 1, 2], ['word', 'h', 2, 3]]],
    ['at a comma behind a name', 'pump,seal', [['word', 'pump', 0, 4], ['mark', ',', 4, 5], ['word', 'seal', 5, 9]]],
    ['at a comma behind a name, a figure behind it', 'pump,5', [['word', 'pump', 0, 4], ['mark', ',', 4, 5], ['number', '5', 5, 6]]],
    ['at a comma behind a name that ends with a digit', 'bank2,5', [['word', 'bank2', 0, 5], ['mark', ',', 5, 6], ['number', '5', 6, 7]]],
    ['at a comma behind a figure with letters', '4h2,5', [['mixed', '4h2', 0, 3], ['mark', ',', 3, 4], ['number', '5', 4, 5]]],
    ['at a comma behind a date', '2026-11-24,5', [['date', '2026-11-24', 0, 10], ['mark', ',', 10, 11], ['number', '5', 11, 12]]],
    ['at a comma between dates', '2026-11,2026-12', [['date', '2026-11', 0, 7], ['mark', ',', 7, 8], ['date', '2026-12', 8, 15]]],
    ['at a comma behind an amount below nothing', '-4,5', [['mixed', '-4', 0, 2], ['mark', ',', 2, 3], ['number', '5', 3, 4]]],
    ['at a comma behind an amount with a sign of money', '$1,200', [['mixed', '$1', 0, 2], ['mark', ',', 2, 3], ['number', '200', 3, 6]]],
    ['at a comma that a space follows', '1, 2', [['number', '1', 0, 1], ['mark', ',', 1, 2], ['number', '2', 3, 4]]],
    ['at a comma that a name follows', '1,h', [['number', '1', 0, 1], ['mark', ',', 1, 2], ['word', 'h', 2, 3]]],
    ['at a comma that a point follows', '1,.5', [['number', '1', 0, 1], ['mark', ',', 1, 2], ['mixed', '.5', 2, 4]]],
    ['at a comma behind a point', '1.,5', [['mixed', '1.', 0, 2], ['mark', ',', 2, 3], ['number', '5', 3, 4]]],
    ['at the first of two commas', '1,,2', [['number', '1', 0, 1], ['mark', ',', 1, 2], ['mark', ',', 2, 3], ['number', '2', 3, 4]]],
    ['at a comma at the end of the line', '1,200,', [['mixed', '1,200', 0, 5], ['mark', ',', 5, 6]]],
    ['at a comma at the end of the line, a digit below it', '1,\n2', [['number', '1', 0, 1], ['mark', ',', 1, 2]]],
    ['at nothing else', 'a.b:c(d)-e\\f', [['mixed', 'a.b:c(d)-e\\f', 0, 12]]],
    ['before a curly quote only at a space', 'a“b ”c', [['strange', 'a“b', 0, 3], ['strange', '”c', 4, 6]]],
  ];
  test.each(rows)('%s: %j', (_, line, tokens) => expect(firstOf(line)).toEqual(tokens));

  test('and each mark is a token by itself', () => {
    expect(firstOf(',/%//,')).toEqual([['mark', ',', 0, 1], ['mark', '/', 1, 2], ['mark', '%', 2, 3], ['mark', '/', 3, 4], ['mark', '/', 4, 5], ['mark', ',', 5, 6]]);
  });
});

describe('strange characters', () => {
  // ISO 10646: cent, pound, currency sign and yen are U+00A2–U+00A5; the block “Currency Symbols” is U+20A0–U+20CF.
  const money = ['\u00a2', '\u00a3', '\u00a4', '\u00a5', '\u20a0', '\u20ac', '\u20bf', '\u20cf'];
  test.each(money.map((sign) => [sign]))('the sign of money %s is wrong at a number, but no look-alike', (sign) => {
    for (const run of [sign, `${sign}5`, `5${sign}`, `a${sign}`]) {
      const block = blockOf(`part ${run}`);
      expect(writtenOf(block.statements[0])).toEqual([['word', 'part', 0, 4], ['mixed', run, 5, 5 + run.length]]);
      expect(codesOf(block)).toEqual([]);
    }
  });

  // Just outside the signs of money; just outside the printable part of ASCII (space to tilde); then far from both.
  const strange = ['\u00a1', '\u00a6', '\u209f', '\u20d0', '\u007f', '\u0080', '\u0001', '\u001f', '\u000b', '\u00a0', '\u00e9', '\u0100', '\u0430', '\u2013', '\u2019', '\u200b', '\ufffd', '\ud800', '\u{1f527}'];
  test.each(strange.map((character) => [`U+${(character.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}`, character]))('%s makes a run strange, wherever it stands in it', (_, character) => {
    for (const run of [character, `${character}5`, `5${character}`, `a${character}b`, `2026-11${character}`]) {
      const block = blockOf(`part ${run} 2`);
      const end = 5 + run.length;
      expect(writtenOf(block.statements[0])).toEqual([['word', 'part', 0, 4], ['strange', run, 5, end], ['number', '2', end + 1, end + 2]]);
      expect(block.problems.map(placeOf)).toEqual([['strange-character', 5, end]]);
    }
  });

  test('a sign of money beside one does not hide it', () => {
    expect(firstOf('€5é')).toEqual([['strange', '€5é', 0, 3]]);
    expect(firstOf('é5€')).toEqual([['strange', 'é5€', 0, 3]]);
  });

  test('a run with one ends where every run does', () => {
    expect(firstOf('1é,2')).toEqual([['strange', '1é', 0, 2], ['mark', ',', 2, 3], ['number', '2', 3, 4]]);
    expect(firstOf('é/é%é"é"é#é')).toEqual([
      ['strange', 'é', 0, 1], ['mark', '/', 1, 2], ['strange', 'é', 2, 3], ['mark', '%', 3, 4], ['strange', 'é', 4, 5], ['text', 'é', 5, 8], ['strange', 'é', 8, 9],
    ]);
  });

  test('a line tells of the first of them only', () => {
    expect(blockOf('part é ü 2').problems.map(placeOf)).toEqual([['strange-character', 5, 6]]);
  });
});

describe('a title in curly quotes is one strange token', () => {
  const opening = ['\u201c', '\u201d', '\u201e', '\u201f'];
  const closing = ['\u201c', '\u201d', '"'];
  test.each(opening.flatMap((open) => closing.map((close) => [open, close])))('%sCoolant pump, 5%% #2%s', (open, close) => {
    const title = `${open}Coolant pump, 5% #2${close}`;
    const block = blockOf(`part ${title} 64.30`);
    expect(writtenOf(block.statements[0])).toEqual([['word', 'part', 0, 4], ['strange', title, 5, 26], ['number', '64.30', 27, 32]]);
    expect(block.comments).toEqual([]);
    expect(block.problems.map(placeOf)).toEqual([['strange-character', 5, 26]]);
  });

  // French, reversed as German print has it, single quotes, and the fullwidth quote of East Asian keyboards.
  test.each(['«»', '»«', '‘’', '‹›', '＂＂', '«"'])('%s', ([open, close]) => {
    expect(firstOf(`${open}Coolant “pump” 2${close} 64.30`)).toEqual([['strange', `${open}Coolant “pump” 2${close}`, 0, 18], ['number', '64.30', 19, 24]]);
  });

  test.each([...opening, '«', '»', '‘', '‹', '＂'].map((open) => [open]))('%s that nothing closes takes the rest of its line, and no more', (open) => {
    const block = blockOf(`part ${open}Pump 2 # by hand\n  takes 5\n`);
    expect(writtenOf(block.statements[0])).toEqual([['word', 'part', 0, 4], ['strange', `${open}Pump 2 # by hand`, 5, 22]]);
    expect(writtenOf(block.statements[0]?.children[0])).toEqual([['word', 'takes', 25, 30], ['number', '5', 31, 32]]);
    expect(block.comments).toEqual([]);
  });

  test('a low quote does not close one, and what follows the closing quote is read anew', () => {
    expect(firstOf('“a„b”c')).toEqual([['strange', '“a„b”', 0, 5], ['word', 'c', 5, 6]]);
    expect(firstOf('““5')).toEqual([['strange', '““', 0, 2], ['number', '5', 2, 3]]);
  });

  test('a plain quote that opens a title of its own does not close one: one mistake stays one', () => {
    for (const line of ['option ‘x "O"', 'part p “P "Q" 1 new']) expect(blockOf(line).problems.map(({ code }) => code)).toEqual(['strange-character']);
  });

  test('a plain quote inside does not close one that goes on to its own closing quote', () => {
    const whole = (title: string) => expect(firstOf(`part ${title} 64.30`)).toEqual([['word', 'part', 0, 4], ['strange', title, 5, 5 + title.length], ['number', '64.30', 6 + title.length, 11 + title.length]]);
    for (const title of ['“Head 7/8" long”', '“Head 7/8"”', '„Head 7/8" long“', '«Head 7/8" long»', '‘Head 7/8" long’']) whole(title);
    expect(blockOf('part “Head 7/8" long” 64.30').problems.map(({ message }) => message.instead)).toEqual(['Type "Head 7/8\\" long".']);
    // Where another title opens first, or the line ends in a comment, the plain quote was meant to close it.
    for (const rest of [' from “x”', ' from "x”"', ' new # said ”', ' new']) expect(firstOf(`part “Head"${rest}`)?.slice(0, 2)).toEqual([['word', 'part', 0, 4], ['strange', '“Head"', 5, 11]]);
  });

  test('one that is closed on the next line only is not closed', () => {
    expect(firstOf('part “a\n”')).toEqual([['word', 'part', 0, 4], ['strange', '“a', 5, 7]]);
  });
});

describe('a text stands between quotes', () => {
  const rows: readonly (readonly [written: string, text: string])[] = [
    ['""', ''],
    ['" "', ' '],
    ['"Rear head"', 'Rear head'],
    ['"a, b/c 5% #2\td"', 'a, b/c 5% #2\td'],
    ['"“Bärbel’s” 🔧"', '“Bärbel’s” 🔧'],
    // \" and \\ are undone; before anything else a backslash is a backslash.
    ['"a \\" b"', 'a " b'],
    ['"\\""', '"'],
    ['"\\"\\""', '""'],
    ['"a\\\\"', 'a\\'],
    ['"\\\\"', '\\'],
    ['"\\\\\\\\"', '\\\\'],
    ['"a\\\\\\"b"', 'a\\"b'],
    ['"a\\\\\\""', 'a\\"'],
    ['"C:\\new\\tin"', 'C:\\new\\tin'],
    ['"\\\\n"', '\\n'],
  ];
  test.each(rows)('%s is the text %j', (written, text) => {
    const end = 5 + written.length;
    for (const [behind, rest] of [['', []], [' 2 # x', [['number', '2', end + 1, end + 2]]], [' "b"', [['text', 'b', end + 1, end + 4]]]] as const) {
      const block = blockOf(`part ${written}${behind}\n`);
      expect(writtenOf(block.statements[0])).toEqual([['word', 'part', 0, 4], ['text', text, 5, end], ...rest]);
      expect(codesOf(block)).toEqual([]);
    }
  });

  test('and the next token may stand right behind it', () => {
    expect(firstOf('"a"b')).toEqual([['text', 'a', 0, 3], ['word', 'b', 3, 4]]);
    expect(firstOf('"a""b"')).toEqual([['text', 'a', 0, 3], ['text', 'b', 3, 6]]);
    expect(firstOf('"a",5')).toEqual([['text', 'a', 0, 3], ['mark', ',', 3, 4], ['number', '5', 4, 5]]);
    expect(firstOf('"a"\\')).toEqual([['text', 'a', 0, 3], ['mixed', '\\', 3, 4]]);
    expect(firstOf('"a"\\"b"')).toEqual([['text', 'a', 0, 3], ['mixed', '\\', 3, 4], ['text', 'b', 4, 7]]);
  });
});

describe('a text that is not closed takes the rest of its line', () => {
  const rows: readonly (readonly [written: string, text: string])[] = [
    ['"', ''],
    ['"a', 'a'],
    ['"Pump 64.30 new', 'Pump 64.30 new'],
    ['"Pump # 2', 'Pump # 2'],
    ['"Pump”', 'Pump”'],
    // The last quote belongs to the title, since a backslash stands before it that no other one undoes.
    ['"\\"', '"'],
    ['"a\\"', 'a"'],
    ['"a\\" b', 'a" b'],
    ['"a\\\\\\"', 'a\\"'],
    ['"\\\\\\\\\\"', '\\\\"'],
    // A backslash at the end of the line keeps nothing from ending.
    ['"a\\', 'a\\'],
    ['"\\', '\\'],
    ['"a\\\\', 'a\\'],
    ['"a\\\\\\', 'a\\\\'],
  ];
  test.each(rows)('%s', (written, text) => {
    const end = 5 + written.length;
    for (const lineEnd of ['', '\n', '\r\n']) {
      const block = blockOf(`part ${written}${lineEnd}${lineEnd === '' ? '' : '  "b"'}`);
      expect(writtenOf(block.statements[0])).toEqual([['word', 'part', 0, 4], ['text', text, 5, end, true]]);
      expect(block.problems.map(placeOf)).toEqual([['open-text', 5, end]]);
      expect(block.comments).toEqual([]);
      const below = end + lineEnd.length + 2;
      expect(writtenOf(block.statements[0]?.children[0])).toEqual(lineEnd === '' ? undefined : [['text', 'b', below, below + 3]]);
    }
  });

  test('also behind a text that is', () => {
    expect(firstOf('"a" "b')).toEqual([['text', 'a', 0, 3], ['text', 'b', 4, 6, true]]);
    expect(firstOf('"a""')).toEqual([['text', 'a', 0, 3], ['text', '', 3, 4, true]]);
  });
});

describe('comments', () => {
  const rows: readonly (readonly [line: string, tokens: readonly Written[] | undefined, comments: readonly Comment[]])[] = [
    ['part 2 # x', [['word', 'part', 0, 4], ['number', '2', 5, 6]], [{ start: 7, end: 10, line: 0 }]],
    ['part 2#x # y', [['word', 'part', 0, 4], ['number', '2', 5, 6]], [{ start: 6, end: 12, line: 0 }]],
    ['part "a"# "b', [['word', 'part', 0, 4], ['text', 'a', 5, 8]], [{ start: 8, end: 12, line: 0 }]],
    ['part "#" 2', [['word', 'part', 0, 4], ['text', '#', 5, 8], ['number', '2', 9, 10]], []],
    ['part /# x\r\n', [['word', 'part', 0, 4], ['mark', '/', 5, 6]], [{ start: 6, end: 9, line: 0 }]],
    ['part\n  #\n# y\n', [['word', 'part', 0, 4]], [{ start: 7, end: 8, line: 1 }, { start: 9, end: 12, line: 2 }]],
    ['# x', undefined, [{ start: 0, end: 3, line: 0 }]],
    [' \t# x\n', undefined, [{ start: 2, end: 5, line: 0 }]],
    ['\n\n#', undefined, [{ start: 2, end: 3, line: 2 }]],
    ['', undefined, []],
    [' \t \n\t', undefined, []],
  ];
  test.each(rows)('%j', (text, tokens, comments) => {
    const block = blockOf(text);
    expect(writtenOf(block.statements[0])).toEqual(tokens);
    expect(block.statements).toHaveLength(tokens === undefined ? 0 : 1);
    expect(block.statements[0]?.children ?? []).toEqual([]);
    expect(block.comments).toEqual(comments);
    expect(codesOf(block)).toEqual([]);
  });

  test('a line holds its own comment alone', () => {
    const [statement] = blockOf('part # x\n  takes 2\n  fits 3 # y\n').statements;
    expect([statement, ...(statement?.children ?? [])].map((one) => one?.comment)).toEqual([{ start: 5, end: 8, line: 0 }, undefined, { start: 28, end: 31, line: 2 }]);
  });
});

describe('places', () => {
  const text = 'steelyard 1\n\n# Parts\npart pump "Pump" 2, 5% é\r\n  takes "x\r\n  # end\r\npart "seal" 1,200\n';
  const tree = parse('a.yard', text);

  test('count from the start of the block', () => {
    expect(tree.starts).toEqual([0, 21, 68]);
    expect(tree.blocks.map(({ statements }) => writtenOf(statements[0]))).toEqual([
      [['word', 'steelyard', 0, 9], ['number', '1', 10, 11]],
      [['word', 'part', 0, 4], ['word', 'pump', 5, 9], ['text', 'Pump', 10, 16], ['number', '2', 17, 18], ['mark', ',', 18, 19], ['number', '5', 20, 21], ['mark', '%', 21, 22], ['strange', 'é', 23, 24]],
      [['word', 'part', 0, 4], ['text', 'seal', 5, 11], ['mixed', '1,200', 12, 17]],
    ]);
    expect(writtenOf(tree.blocks[1]?.statements[0]?.children[0])).toEqual([['word', 'takes', 28, 33], ['text', 'x', 34, 36, true]]);
    expect(tree.blocks.map(({ comments }) => comments)).toEqual([[{ start: 13, end: 20, line: 2 }], [{ start: 40, end: 45, line: 2 }], []]);
    expect(tree.blocks[1]?.problems.map(placeOf)).toEqual([['strange-character', 23, 24], ['open-text', 34, 36]]);
  });

  test('and are found again in the file', () => {
    const [, block] = tree.blocks;
    expect(block?.problems.map(({ at }) => rangeIn(tree, at)).map((range) => text.slice(range?.start, range?.end))).toEqual(['é', '"x']);
  });

  test('a byte order mark at the start of a file is counted, and no part of a token', () => {
    const block = blockOf('\ufeffsteelyard 1');
    expect(writtenOf(block.statements[0])).toEqual([['word', 'steelyard', 1, 10], ['number', '1', 11, 12]]);
    expect(codesOf(block)).toEqual([]);
  });

  test('a carriage return is part of a line end before a line feed or at the end of the file, and strange elsewhere', () => {
    expect(firstOf('part 2\r\n')).toEqual([['word', 'part', 0, 4], ['number', '2', 5, 6]]);
    expect(firstOf('part\r2\r')).toEqual([['strange', 'part\r2', 0, 6]]);
  });
});

test('words are what stands in the file, however many there are and however like each other', () => {
  const names = Array.from({ length: 20_000 }, (_, i) => [`n${i}`, `${i}`, `a-name-too-long-to-keep-${i}`]).flat();
  const text = names.join('\n');
  expect(parse('a.yard', text).blocks.map(({ statements }) => statements[0]?.tokens[0]?.text).join('\n') === text).toBe(true);
});
