import { describe, expect, test } from 'vitest';
import { parse, parseSome, print, rangeIn, reparse, type Block, type Tree } from '../../src/language/index.js';
import { dump } from './tree.js';

/** Which block of the tree before each block after it is, by its number; `-` for one that was read anew. */
function kept(before: Tree, after: Tree): string {
  return after.blocks.map((block) => (before.blocks.includes(block) ? String(before.blocks.indexOf(block)) : '-')).join(' ');
}

const three = 'a\n  a1\nb\n  b1\nc\n  c1\n';

describe('after an edit, blocks before and behind it are the same blocks', () => {
  test.each([
    ['within a block', three, 'a\n  a1\nb\n  b2\nc\n  c1\n', '0 - 2'],
    ['within the first', three, 'a\n  a2\nb\n  b1\nc\n  c1\n', '- 1 2'],
    ['its first character', three, 'x\n  a1\nb\n  b1\nc\n  c1\n', '- 1 2'],
    ['within the last', three, 'a\n  a1\nb\n  b1\nc\n  c2\n', '0 1 -'],
    ['in the first and the last', three, 'x\n  a1\nb\n  b1\nx\n  c1\n', '- - -'],
    ['a new block behind the last', three, `${three}d\n`, '0 1 2 -'],
    ['a new line behind the last', three, `${three}  d\n`, '0 1 -'],
    ['an empty line behind the last', three, `${three}\n`, '0 1 -'],
    // Only the first block may start with a byte order mark, so which one is the first is never passed over.
    ['a new block before the first', three, `n\n${three}`, '- - 1 2'],
    ['an empty line before the first', three, `\n${three}`, '- - 1 2'],
    ['a new block between two', three, 'a\n  a1\nn\nb\n  b1\nc\n  c1\n', '0 - 1 2'],
    ['a comment between two, which is of the one before', three, 'a\n  a1\n# n\nb\n  b1\nc\n  c1\n', '- 1 2'],
    ['a block taken out', three, 'a\n  a1\nc\n  c1\n', '0 2'],
    ['the first taken out', three, 'b\n  b1\nc\n  c1\n', '- 2'],
    ['the last taken out', three, 'a\n  a1\nb\n  b1\n', '0 1'],
    ['all but the first taken out', three, 'a\n  a1\n', '0'],
    ['all but the last taken out', three, 'c\n  c1\n', '-'],
    ['two joined by indentation', three, 'a\n  a1\n  b\n  b1\nc\n  c1\n', '- 2'],
    ['two joined by a comment sign', three, 'a\n  a1\n#b\n  b1\nc\n  c1\n', '- 2'],
    ['two joined by a lost line end', three, 'a\n  a1b\n  b1\nc\n  c1\n', '- 2'],
    ['the last two joined', three, 'a\n  a1\nb\n  b1\n  c\n  c1\n', '0 -'],
    ['one split', three, 'a\n  a1\nb\nb1\nc\n  c1\n', '0 - - 2'],
    ['the last split', three, 'a\n  a1\nb\n  b1\nc\nc1\n', '0 1 - -'],
    ['one repeated', three, 'a\n  a1\nb\n  b1\nb\n  b1\nc\n  c1\n', '0 1 - 2'],
    ['the last repeated', three, `${three}c\n  c1\n`, '0 1 2 -'],
    ['the first repeated', three, `a\n  a1\n${three}`, '0 - 1 2'],
    ['one of three equal ones taken out', 'x\nx\nx\n', 'x\nx\n', '0 1'],
    ['one more of three equal ones', 'x\nx\nx\n', 'x\nx\nx\nx\n', '0 1 2 -'],
    ['the last line loses its end', three, 'a\n  a1\nb\n  b1\nc\n  c1', '0 1 -'],
    ['the last line goes on', 'a\nb', 'a\nbc', '0 -'],
    ['the last line, without an end, gets a block behind it', 'a\nb', 'a\nb\nc', '0 - -'],
    ['another end of a line', three, 'a\n  a1\r\nb\n  b1\nc\n  c1\n', '- 1 2'],
    ['emptied', three, '', '-'],
    ['filled', '', three, '- - -'],
    ['all unlike', three, 'x\ny\n', '- -'],
    ['a byte order mark put before', three, `\ufeff${three}`, '- 1 2'],
    ['a byte order mark taken away', `\ufeff${three}`, three, '- 1 2'],
    ['a byte order mark that comes to stand at the start', 'a\n\ufeffb\n', '\ufeffb\n', '-'],
    ['a byte order mark that stands at the start no more', '\ufeffb\n', 'a\n\ufeffb\n', '- -'],
  ])('%s', (_, text, next, expected) => {
    const before = parse('a.yard', text);
    const after = reparse(before, next);
    expect(kept(before, after)).toBe(expected);
    expect(dump(after)).toEqual(dump(parse('a.yard', next)));
    expect(print(after)).toBe(next);
  });

  test.each([0, 1, 2, 7, 8, 15, 16, 17, 38, 39])('one of forty: number %i', (edited) => {
    const before = parse('a.yard', Array.from({ length: 40 }, (_, i) => `part p${i}\n  from shelf\n`).join(''));
    const after = reparse(before, before.text.replace(`part p${edited}\n`, 'part other\n  first\n'));
    expect(after.blocks).toHaveLength(40);
    expect(after.blocks.flatMap((block, i) => (block === before.blocks[i] ? [] : [i]))).toEqual([edited]);
    expect(dump(after)).toEqual(dump(parse('a.yard', after.text)));
  });

  test('and the tree before stays as it was', () => {
    const before = parse('a.yard', three);
    reparse(before, 'n\nb\n');
    expect([before.text, before.starts, print(before)]).toEqual([three, [0, 7, 14], three]);
  });
});

describe('where a place in a block is in the file', () => {
  const trees = () => {
    const before = parse('a.yard', three);
    return { before, after: reparse(before, 'a\n  a1\nlonger\n  b1\nc\n  c1\n'), other: parse('b.yard', three) };
  };
  type Which = keyof ReturnType<typeof trees>;

  test.each<readonly [what: string, tree: Which, blockOf: Which, block: number, expected: unknown]>([
    ['the first block', 'before', 'before', 0, { start: 2, end: 4 }],
    ['a later one', 'before', 'before', 2, { start: 16, end: 18 }],
    ['one behind the edit', 'after', 'before', 2, { start: 21, end: 23 }],
    ['one before the edit', 'after', 'before', 0, { start: 2, end: 4 }],
    ['the edited one', 'after', 'after', 1, { start: 9, end: 11 }],
    ['what stood there before is nowhere', 'after', 'before', 1, undefined],
    ['nor is what is new in the tree before', 'before', 'after', 1, undefined],
    ['nor an equal block of another file', 'before', 'other', 1, undefined],
  ])('%s', (_, tree, blockOf, i, expected) => {
    const all = trees();
    const block = all[blockOf].blocks[i] as Block;
    // Asked twice, since the places of a tree are kept from the first time on.
    expect([rangeIn(all[tree], { block, start: 2, end: 4 }), rangeIn(all[tree], { block, start: 2, end: 4 })]).toEqual([expected, expected]);
  });
});

describe('some blocks of a file', () => {
  const text = '\ufeffsteelyard 1\nshop "S"\n  rate bench 100.00\npart pump 1 # one\n  from  shelf\n   x\npart\tseal\npart # two\npart"T"\npart\r\n\ufeffpart  late\nend';
  /** The two words that each block is asked by. */
  const words = [['steelyard', '1'], ['shop', undefined], ['part', 'pump'], ['part', 'seal'], ['part', undefined], ['part', undefined], ['part', undefined], ['part', 'late'], ['end', undefined]];

  test('are asked for by their first two words', () => {
    const asked: (string | undefined)[][] = [];
    parseSome('a.yard', text, (first, second) => asked.push([first, second]) < 0);
    expect(asked).toEqual(words);
  });

  test.each([
    ['by the first word', (first: string) => first === 'shop', [1]],
    ['by the second', (_: string, second: string | undefined) => second === 'pump' || second === '1', [0, 2]],
    ['one with a byte order mark that is out of place', (_: string, second: string | undefined) => second === 'late', [7]],
    ['the last', (first: string) => first === 'end', [8]],
    ['all', () => true, [0, 1, 2, 3, 4, 5, 6, 7, 8]],
    ['none', () => false, []],
  ])('%s, each as in the whole file', (_, wanted, expected) => {
    const whole = parse('a.yard', text);
    const some = parseSome('a.yard', text, wanted);
    expect(some.starts).toEqual(expected.map((i) => whole.starts[i]));
    expect(dump(some)).toEqual(dump({ ...whole, blocks: expected.map((i) => whole.blocks[i] as Block), starts: some.starts }));
  });

  test.each([
    ['a comment, a title and an indented line', '# n\n"part"\n  part\npart\n', [18]],
    ['a first line that is indented', '  part\npart\n', [7]],
    ['nothing', '', []],
  ])('no block without a word at its left edge: %s', (_, other, expected) => {
    expect(parseSome('a.yard', other, () => true).starts).toEqual(expected);
  });
});

describe('files too long', () => {
  /** 8,000 comments of 1,000 characters with their line ends: as many characters as are read. */
  const longest = `#${'x'.repeat(998)}\n`.repeat(8_000);
  const widest = 'a\n'.repeat(200_000);
  const shown = ({ blocks, starts, text }: Tree, file: string) => [text === file, blocks.length, starts.length, ...blocks.flatMap(({ problems }) => problems.map(({ code, at, message }) => [code, at.start, at.end, message.what]))];
  const none = () => false;

  test('the most characters are read', () => {
    expect(shown(parse('a.yard', longest), longest)).toEqual([true, 1, 1]);
    expect(parse('a.yard', longest).blocks[0]?.comments).toHaveLength(8_000);
    expect(shown(parseSome('a.yard', longest, none), longest)).toEqual([true, 0, 0]);
    const before = parse('a.yard', 'b\ny\n');
    expect(kept(before, reparse(before, `b\n${longest.slice(2)}`))).toBe('0 -');
  });

  test('one more is told, and nothing is read', () => {
    const file = `${longest}a`;
    const expected = [true, 1, 1, ['long-file', 0, 1, 'This file has 8000001 characters; the longest that is read has 8000000.']];
    const tree = parse('a.yard', file);
    expect(shown(tree, file)).toEqual(expected);
    expect(tree.blocks[0]).toMatchObject({ uri: 'a.yard', lineEnds: 0, statements: [], comments: [] });
    expect(print(tree) === file).toBe(true);
    expect(shown(parseSome('a.yard', file, none), file)).toEqual(expected);
    expect(shown(reparse(parse('a.yard', 'a\n'), file), file)).toEqual(expected);
  });

  const tooWide = ['long-file', 0, 1, 'This file has 200001 lines at its left edge; the longest that is read has 200000.'];

  test('the most lines at the left edge are read', () => {
    expect(shown(parse('a.yard', widest), widest)).toEqual([true, 200_000, 200_000]);
  });

  test('and are asked for', () => {
    expect(shown(parseSome('a.yard', widest, none), widest)).toEqual([true, 0, 0]);
  });

  test('one more is told', () => {
    const file = `${widest}a\n`;
    expect(shown(parse('a.yard', file), file)).toEqual([true, 1, 1, tooWide]);
  });

  test('one more is told, whatever is asked for', () => {
    const file = `${widest}a\n`;
    expect(shown(parseSome('a.yard', file, none), file)).toEqual([true, 1, 1, tooWide]);
  });

  test('the most come in by an edit, between a first and a last that stay', () => {
    const before = parse('a.yard', 'b\nc\n');
    const after = reparse(before, `b\n${widest.slice(0, 399_996)}c\n`);
    expect(after.blocks).toHaveLength(200_000);
    expect([after.blocks[0] === before.blocks[0], after.blocks[199_999] === before.blocks[1]]).toEqual([true, true]);
  });

  test('one more than that', () => {
    const file = `b\n${widest.slice(0, 399_998)}c\n`;
    expect(shown(reparse(parse('a.yard', 'b\nc\n'), file), file)).toEqual([true, 1, 1, tooWide]);
  });

  test('also where more is added', () => {
    const text = `${widest}a\n`;
    expect(reparse(parse('a.yard', text), `${text}b\n`).blocks).toHaveLength(1);
  });

  test('until there is less', () => {
    const tree = parse('a.yard', `${widest}a\n`);
    expect(dump(reparse(tree, three))).toEqual(dump(parse('a.yard', three)));
  });
});
