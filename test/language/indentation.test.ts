import { describe, expect, test } from 'vitest';
import { limits, parse, type Statement } from '../../src/language/index.js';

/** Lines as `a(b(c) d)`: each line by its first word, in brackets what stands below it; top lines side by side. */
function outline(text: string): string {
  const shown = ({ tokens, children }: Statement): string => `${tokens[0]?.text ?? ''}${children.length === 0 ? '' : `(${children.map(shown).join(' ')})`}`;
  return parse('a.yard', text).blocks.flatMap(({ statements }) => statements.map(shown)).join(' ');
}

/** Every problem as its code and the characters of the file that it marks, with the text that its fix puts there. */
function told(text: string): readonly (readonly [code: string, from: number, to: number, mended: string | undefined])[] {
  const { blocks, starts } = parse('a.yard', text);
  return blocks.flatMap(({ problems }, i) => problems.map(({ code, at, fix }) => [code, (starts[i] as number) + at.start, (starts[i] as number) + at.end, fix?.text] as const));
}

const linesAt = (words: string) => [...words].map((word, i) => `${' '.repeat(i)}${word}\n`).join('');
/** A line one character longer than is read. */
const tooLong = 'x'.repeat(2_001);

describe('which line stands below which', () => {
  test.each([
    ['a deeper line stands below the line above it', 'a\n  b\n    c\n', 'a(b(c))'],
    ['one space is a step', 'a\n b\n  c\n', 'a(b(c))'],
    ['so are six', 'a\n      b\n', 'a(b)'],
    ['a line as deep as the one above is its neighbour', 'a\n  b\n  c\n', 'a(b c)'],
    ['a line can go back by one step', 'a\n  b\n    c\n  d\n', 'a(b(c) d)'],
    ['or by several', 'a\n  b\n    c\n      d\n  e\n', 'a(b(c(d)) e)'],
    ['and then deeper again', 'a\n  b\n    c\n  d\n    e\n', 'a(b(c) d(e))'],
    ['at the left edge starts what belongs to nothing', 'a\n  b\nc\n  d\n', 'a(b) c(d)'],
    ['tabs are as good as spaces', 'a\n\tb\n\t\tc\n\td\n', 'a(b(c) d)'],
    ['one block in tabs and another in spaces', 'a\n\tb\nc\n  d\n', 'a(b) c(d)'],
    ['empty lines change nothing', 'a\n\n  b\n \n\n    c\n', 'a(b(c))'],
    ['nor do comments, wherever they start', 'a\n  b\n# one\n        # two\n    c\n # three\n  d\n', 'a(b(c) d)'],
    ['nor tabs in lines that hold nothing', 'a\n  b\n\t\n\t# one\n    c\n', 'a(b(c))'],
    ['nor the other way to end a line', 'a\r\n  b\r\n\r\n    c\r\n  d\r\n', 'a(b(c) d)'],
    ['nor a last line without an end', 'a\n  b\n    c', 'a(b(c))'],
    ['twelve steps', linesAt('abcdefghijkl'), 'a(b(c(d(e(f(g(h(i(j(k(l)))))))))))'],
  ])('%s', (_, text, expected) => {
    expect([outline(text), told(text)]).toEqual([expected, []]);
  });
});

describe('a line whose place is in doubt is told, and read where it is likely to belong', () => {
  test.each([
    // Less than the line above, and in line with nothing before.
    ['uneven', 'a\n    b\n  c\n', 'a(b c)', [['uneven-indent', 8, 10, '    ']]],
    ['uneven between two lines', 'a\n  b\n      c\n    d\n', 'a(b(c d))', [['uneven-indent', 14, 18, '      ']]],
    ['uneven after several steps back: it is mended to the nearest', 'a\n  b\n    c\n      d\n   e\n', 'a(b(c(d) e))', [['uneven-indent', 20, 23, '    ']]],
    ['what lines up with an uneven line is even', 'a\n    b\n  c\n  d\n', 'a(b c d)', [['uneven-indent', 8, 10, '    ']]],
    ['uneven in tabs', 'a\n\t\tb\n\tc\n', 'a(b c)', [['uneven-indent', 6, 7, '\t\t']]],
    ['uneven in a second block', 'z\na\n    b\n  c\n', 'z a(b c)', [['uneven-indent', 10, 12, '    ']]],
    // Tabs and spaces: the line belongs to the nearest line whose indentation it repeats.
    ['both in one line, below a line at the edge', 'a\n \tb\n', 'a(b)', [['mixed-indent', 2, 4, '  ']]],
    ['both in one line, as long as its neighbour', 'a\n  b\n \tc\n', 'a(b c)', [['mixed-indent', 6, 8, '  ']]],
    ['a tab behind the indentation of the line above', 'a\n  b\n  \tc\n', 'a(b(c))', [['mixed-indent', 6, 9, '    ']]],
    ['a tab behind that of the line two above', 'a\n  b\n    c\n  \t  d\n', 'a(b(c d))', [['mixed-indent', 12, 17, '    ']]],
    ['tabs below spaces, and more of them', 'a\n  b\n\t\t\tc\n', 'a(b c)', [['mixed-indent', 6, 9, '  ']]],
    ['tabs below two steps of spaces, and more of them', 'a\n  b\n    c\n\t\t\t\t\td\n', 'a(b(c) d)', [['mixed-indent', 12, 17, '  ']]],
    ['a tab after two steps of spaces', 'a\n  b\n    c\n\td\n', 'a(b(c) d)', [['mixed-indent', 12, 13, '  ']]],
    ['a tab after a line that is neighbour to a deeper one', 'a\n  b\n    c\n  d\n\te\n', 'a(b(c) d e)', [['mixed-indent', 16, 17, '  ']]],
    ['spaces below a tab, and more of them', 'a\n\tb\n  c\n', 'a(b c)', [['mixed-indent', 5, 7, '\t']]],
    // One fault, one message: a line in doubt is no measure for those behind it.
    ['a good line behind one in doubt', 'a\n  b\n\tc\n  d\n  e\n', 'a(b c d e)', [['mixed-indent', 6, 7, '  ']]],
    ['what stands below one in doubt, and a good line behind it', 'a\n  b\n\tc\n\t\td\n  e\n', 'a(b c(d) e)', [['mixed-indent', 6, 7, '  ']]],
    ['a line behind one in doubt that is uneven to the one before', 'a\n  b\n\tc\n   d\n', 'a(b c d)', [['mixed-indent', 6, 7, '  ']]],
    // Nothing above it.
    ['indented at the start of a file', '  a\n', '', [['stray-indent', 0, 2, '']]],
    ['after empty lines and comments', '# one\n\n  a\nb\n', 'b', [['stray-indent', 7, 9, '']]],
    ['behind a byte order mark', '\ufeff  a\nb\n', 'b', [['stray-indent', 1, 3, '']]],
    ['what stands below it is left out in silence', '  a\n    b\n      c\nd\n  e\n', 'd(e)', [['stray-indent', 0, 2, '']]],
    ['its neighbour is read', '  a\n  b\n    c\n', 'b(c)', [['stray-indent', 0, 2, '']]],
    ['so is its neighbour in tabs', '\ta\n\tb\n', 'b', [['stray-indent', 0, 1, '']]],
    ['tabs below it are left out with it', '  a\n\t\t\tb\n', '', [['stray-indent', 0, 2, '']]],
    ['a line less indented than it', '    a\n  b\n', 'b', [['stray-indent', 0, 4, ''], ['uneven-indent', 6, 8, '    ']]],
    ['a line at the edge that starts with a lone carriage return', '\ta\n\rb\n', '\rb', [['stray-indent', 0, 1, ''], ['strange-character', 3, 5, 'b']]],
    // Spaces that are no plain ones.
    ['no-break spaces', 'a\n\u00a0\u00a0b\n\u00a0\u00a0c\n', 'a(b c)', [['strange-character', 2, 4, '  '], ['strange-character', 6, 8, '  ']]],
    ['a no-break space among plain ones', 'a\n  b\n  \u00a0 c\n', 'a(b(c))', [['strange-character', 6, 10, '    ']]],
    ['an ideographic space', 'a\n\u3000b\n', 'a(b)', [['strange-character', 2, 3, ' ']]],
    ['no-break spaces before a comment or nothing', 'a\n\u00a0# one\n\u00a0\u00a0\n  b\n', 'a(b)', []],
  ])('%s', (_, text, expected, problems) => {
    expect([outline(text), told(text)]).toEqual([expected, problems]);
  });

  test.each([
    ['uneven', 'a\n    b\n  c\n', 'a\n    b\n    c\n'],
    ['mixed', 'a\n  b\n  \tc\n', 'a\n  b\n    c\n'],
    ['tabs after spaces', 'a\n  b\n\tc\n', 'a\n  b\n  c\n'],
    ['spaces after tabs', 'a\n\tb\n  c\n', 'a\n\tb\n\tc\n'],
    ['a tab and spaces below a tab', 'a\n\tb\n\t c\n', 'a\n\tb\n\t\tc\n'],
    ['stray', '  a\n', 'a\n'],
    ['no-break', 'a\n\u00a0\u00a0b\n', 'a\n  b\n'],
  ])('and its fix mends it: %s', (_, text, mended) => {
    const [, from, to, instead] = told(text)[0] ?? [];
    expect(text.slice(0, from) + instead + text.slice(to)).toBe(mended);
    expect(told(mended)).toEqual([]);
  });
});

describe('the thirteenth step is left out, and what stands below it', () => {
  const twelve = linesAt('abcdefghijkl');
  const at = (indent: number, word: string) => `${' '.repeat(indent)}${word}\n`;
  test.each([
    ['one line', at(12, 'm'), 'a(b(c(d(e(f(g(h(i(j(k(l)))))))))))', [['too-deep', 90, 102, undefined]]],
    ['what stands below it, in silence', at(12, 'm') + at(13, 'n') + at(14, 'o') + at(13, 'p'), 'a(b(c(d(e(f(g(h(i(j(k(l)))))))))))', [['too-deep', 90, 102, undefined]]],
    ['each of its neighbours is told', at(12, 'm') + at(12, 'n'), 'a(b(c(d(e(f(g(h(i(j(k(l)))))))))))', [['too-deep', 90, 102, undefined], ['too-deep', 104, 116, undefined]]],
    ['a step back is read again', at(12, 'm') + at(11, 'n') + at(10, 'o'), 'a(b(c(d(e(f(g(h(i(j(k(l n) o))))))))))', [['too-deep', 90, 102, undefined]]],
  ])('%s', (_, below, expected, problems) => {
    expect([outline(twelve + below), told(twelve + below)]).toEqual([expected, problems]);
  });
});

describe('a line too long is left out, and what stands below it', () => {
  test('the longest that is read', () => {
    const text = `a ${'x'.repeat(1_998)}\n  b${' '.repeat(1_997)}\n  ${'c'.repeat(1_998)}\r\n`;
    expect(text.split(/\r?\n/).map(({ length }) => length)).toEqual([2_000, 2_000, 2_000, 0]);
    expect([outline(text), told(text)]).toEqual([`a(b ${'c'.repeat(1_998)})`, []]);
  });

  test.each([
    ['at the left edge', `a\n${tooLong}\n  b\nc\n  d\n`, 'a c(d)', [['long-line', 2, 2_003, undefined]]],
    ['with its indentation counted', `a\n  ${'x'.repeat(1_999)}\n    b\n  c\n`, 'a(c)', [['long-line', 2, 2_003, undefined]]],
    ['without its carriage return', `${tooLong}\r\na\r\n`, 'a', [['long-line', 0, 2_001, undefined]]],
    ['below a line, with a neighbour before', `a\n  b\n  ${tooLong}\n    c\n  d\n`, 'a(b d)', [['long-line', 6, 2_009, undefined]]],
    ['what stands below goes with it, also with a tab behind its indentation', `a\n  ${tooLong}\n  \tb\n`, 'a', [['long-line', 2, 2_005, undefined]]],
    ['in tabs as its neighbours', `a\n\t${tooLong}\n\tb\n`, 'a(b)', [['long-line', 2, 2_004, undefined]]],
    ['in spaces, and its neighbour in tabs', `a\n  ${tooLong}\n\tb\n`, 'a(b)', [['long-line', 2, 2_005, undefined], ['mixed-indent', 2_006, 2_007, '  ']]],
    ['in tabs, and its neighbour in spaces', `a\n\t\t${tooLong}\n b\n`, 'a(b)', [['long-line', 2, 2_005, undefined], ['mixed-indent', 2_006, 2_007, '\t\t']]],
    ['uneven to it', `a\n    ${tooLong}\n  b\n`, 'a(b)', [['long-line', 2, 2_007, undefined], ['uneven-indent', 2_008, 2_010, '    ']]],
    ['less indented than the line above: what lines up with it is even', `a\n  b\n ${tooLong}\n c\n`, 'a(b c)', [['long-line', 6, 2_008, undefined]]],
    ['one below another', `a\n  ${tooLong}\n    ${tooLong}\n      b\n    c\n  d\n`, 'a(d)', [['long-line', 2, 2_005, undefined], ['long-line', 2_006, 4_011, undefined]]],
    ['nothing but spaces: nothing can stand below it', `a\n${' '.repeat(2_001)}\n  b\n`, 'a(b)', [['long-line', 2, 2_003, undefined]]],
    ['nothing but spaces and one character', `a\n${' '.repeat(2_000)}x\n  b\n`, 'a(b)', [['long-line', 2, 2_003, undefined]]],
  ])('%s', (_, text, expected, problems) => {
    expect([outline(text), told(text)]).toEqual([expected, problems]);
  });

  test('says how long it is', () => {
    const text = `a\n  b\n  ${'x'.repeat(2_100)}\n`;
    expect(parse('a.yard', text).blocks[0]?.problems[0]?.message.what).toBe('This line has 2102 characters; the longest that is read has 2000.');
  });
});

describe('lines and comments by their number', () => {
  test('lines of a block are counted from its first', () => {
    const { blocks } = parse('a.yard', 'a\n\n  b\n# one\n    c\nd\n  e\n');
    const numbers = ({ tokens, line, indent, children }: Statement): readonly unknown[] => [tokens[0]?.text, line, indent, ...children.map(numbers)];
    expect(blocks.map(({ statements }) => statements.map(numbers))).toEqual([[['a', 0, 0, ['b', 2, 2, ['c', 4, 4]]]], [['d', 0, 0, ['e', 1, 2]]]]);
  });

  test.each([
    ['', [0]],
    ['a', [0]],
    ['a\n', [1]],
    ['a\r\n  b', [1]],
    ['a\n\n\n', [3]],
    ['a\n  b\nc\n# one\nd', [2, 2, 0]],
    ['\n\na\n', [2, 1]],
    ['\ufeff\na\n', [1, 1]],
  ])('line ends of %j', (text, expected) => {
    expect(parse('a.yard', text).blocks.map(({ lineEnds }) => lineEnds)).toEqual(expected);
  });

  test('a comment goes from its # to the end of the line, and is of the block that it stands in', () => {
    const { blocks } = parse('a.yard', 'a # one\r\n# two\n  b "x # y" 1# three  \nc\n\n  #four');
    expect(blocks.map(({ comments }) => comments)).toEqual([
      [{ start: 2, end: 7, line: 0 }, { start: 9, end: 14, line: 1 }, { start: 28, end: 37, line: 2 }],
      [{ start: 5, end: 10, line: 2 }],
    ]);
  });

  test('a line knows the comment behind it, not those on lines of their own', () => {
    const { blocks } = parse('a.yard', 'a # one\n# two\n  b\n');
    const [a] = blocks[0]?.statements ?? [];
    expect([a?.comment, a?.children[0]?.comment]).toEqual([{ start: 2, end: 7, line: 0 }, undefined]);
  });

  test('a title that is not closed holds what looks like a comment', () => {
    const text = 'a\n  b "x # y\n  c # one\n';
    expect(parse('a.yard', text).blocks[0]?.comments).toEqual([{ start: 17, end: 22, line: 2 }]);
    expect(told(text)).toEqual([['open-text', 6, 12, undefined]]);
  });

  test('a line that is left out still has its comment', () => {
    expect(parse('a.yard', '  a # one\n').blocks[0]?.comments).toEqual([{ start: 4, end: 9, line: 0 }]);
  });
});

describe('characters that nobody sees', () => {
  // Code points from the Unicode Character Database: U+200B zero width space, U+202E right-to-left override, U+E0041 tag latin capital letter A.
  test.each([
    ['in a title', 'a\n  b "x\u200by"\n', [['hidden-character', 8, 9, '']], 'U+200B'],
    ['the first of several in a line', 'a "\u202ex\u200b" "\u200b"\n', [['hidden-character', 3, 4, '']], 'U+202E'],
    ['in a comment', 'a\n  # \u200b\n', [['hidden-character', 6, 7, '']], 'U+200B'],
    ['of two units', 'a\n  b "\u{e0041}x"\n', [['hidden-character', 7, 9, '']], 'U+E0041'],
    ['a control character, with four figures', 'a "\u0001"\n', [['hidden-character', 3, 4, '']], 'U+0001'],
    ['delete', 'a "~\u007f"\n', [['hidden-character', 4, 5, '']], 'U+007F'],
    ['one in each line', 'a "\u200b"\n  b "\u00ad"\n', [['hidden-character', 3, 4, ''], ['hidden-character', 11, 12, '']], 'U+200B'],
  ])('%s', (_, text, problems, code) => {
    expect(told(text)).toEqual(problems);
    expect(parse('a.yard', text).blocks[0]?.problems[0]?.message.what).toBe(`There is an invisible character here (${code}).`);
  });

  test.each([
    ['outside a title it stops the reading of the line, which comes first', 'a\n  b "\u200b" c\u200bd\n', [['strange-character', 10, 13, 'cd']]],
    ['the first of two look-alikes', 'a \u0430 \u0435\n', [['strange-character', 2, 3, 'a']]],
    ['letters with marks in a title are nothing to tell', 'a "caf\u00e9 ~ 5\u00a0mm" # \u2013\n', []],
    ['a tab between words is nothing to tell', 'a\tb "\u00e9\tx"\n', []],
  ])('%s', (_, text, problems) => {
    expect(told(text)).toEqual(problems);
  });

  test.each([
    ['a byte order mark at the start', '\ufeffa\n  b\n', 'a(b)', []],
    ['nothing but a byte order mark', '\ufeff', '', []],
    ['two of them', '\ufeff\ufeffa\n', '\ufeffa', [['strange-character', 1, 3, 'a']]],
    ['at the start of a later line', 'a\n\ufeffb\n', 'a \ufeffb', [['strange-character', 2, 4, 'b']]],
  ])('%s', (_, text, expected, problems) => {
    expect([outline(text), told(text)]).toEqual([expected, problems]);
  });
});

// One more than the most: whoever reads the file sees by it that there are more.
test.each([
  [499, 499],
  [500, 500],
  [501, 501],
  [502, 501],
  [700, 501],
])('of %i faults in one block %i are told', (faults, expected) => {
  expect(limits.problems).toBe(500);
  expect(told(`a\n${'  "x\n'.repeat(faults)}`)).toHaveLength(expected);
});
