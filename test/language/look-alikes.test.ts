import { describe, expect, test } from 'vitest';
import { hidden, parse, plainForm, type Block } from '../../src/language/index.js';

const codePoint = (character: string) => `U+${(character.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}`;
const characters = (from: number, to: number): readonly string[] => Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i));
const every = [...characters(0, 0xd7ff), ...characters(0xe000, 0x10ffff)];
const firstBlock = (text: string): Block => parse('a.yard', text).blocks[0] as Block;
/** The text that the one fix of a line puts in. */
const fixOf = (text: string): string | undefined => firstBlock(text).problems[0]?.fix?.text;

describe('a look-alike stands for the plain character that it is taken for', () => {
  // That these are taken for each other is common practice of word processors and keyboards of other scripts. Confusable in the
  // sense of Unicode Technical Standard #39 (from memory) are all but к, т, м, н and в, which look like small capitals.
  const twins: readonly (readonly [what: string, written: string, plain: string])[] = [
    ['curly and low quotes', '\u201c\u201d\u201e\u201f', '""""'],
    ['angle quotes', '\u00ab\u00bb', '""'],
    ['hyphens', '\u2010\u2011', '--'],
    ['the en dash, the em dash and the minus sign', '\u2013\u2014\u2212', '---'],
    ['the slash of fractions and of division', '\u2044\u2215', '//'],
    ['the decimal separator of Arabic, and the low single quote', '\u066b\u201a', '.,'],
    ['small Cyrillic letters', '\u0430\u0435\u043e\u0440\u0441\u0445\u0443', 'aeopcxy'],
    ['small letters of other Cyrillic alphabets', '\u0456\u0455\u0458\u04bb', 'isjh'],
    ['small Cyrillic letters that look like small capitals', '\u043a\u0442\u043c\u043d\u0432', 'ktmhb'],
    ['large Cyrillic letters', '\u0410\u0412\u0415\u041a\u041c\u041d\u041e\u0420\u0421\u0422\u0425\u0423', 'ABEKMHOPCTXY'],
    ['Greek letters', '\u03bf\u03bd\u03b1\u03b9\u03ba\u03c1\u03c4', 'ovaikpt'],
  ];
  test.each(twins)('%s', (_, written, plain) => {
    expect(plainForm(written)).toBe(plain);
    [...written].forEach((character, i) => {
      expect(`${codePoint(character)} ${plainForm(`2${character}x`)}`).toBe(`${codePoint(character)} 2${plain[i]}x`);
      // Told once, as one mistake, with the plain form as its mend; one quote alone would open a text.
      const block = firstBlock(`part x${character}2`);
      const mend = plain[i] === '"' ? undefined : `x${plain[i]}2`;
      expect(block.problems.map(({ code, at, fix }) => [code, at.start, at.end, fix?.text])).toEqual([['strange-character', 5, 8, mend]]);
    });
  });

  test('fullwidth forms, as Unicode Standard Annex #15 folds them (NFKC)', () => {
    const wide = characters(0xff01, 0xff5e);
    expect(wide).toHaveLength(94);
    expect(wide.map((character) => plainForm(character))).toEqual(wide.map((character) => character.normalize('NFKC')));
    // Both ends and the figures by hand.
    expect(plainForm('\uff01\uff5e')).toBe('!~');
    expect(plainForm('６４．３０')).toBe('64.30');
    expect(plainForm('ｐａｒｔ')).toBe('part');
    expect(fixOf('ｐａｒｔ pump')).toBe('part');
  });

  test('plain characters stand for themselves', () => {
    const ascii = characters(0x20, 0x7e).join('');
    expect(ascii).toMatch(/^ !.*}~$/);
    expect(plainForm(ascii)).toBe(ascii);
    expect(plainForm('')).toBe('');
  });

  test('all in one run', () => expect(plainForm('r\u0435ar\u2013h\u0435a\u200bd\u00a0２')).toBe('rear-head 2'));
});

describe('a title in curly quotes gets plain ones and keeps its words', () => {
  const rows: readonly (readonly [written: string, plain: string])[] = [
    ['“Coolant pump”', '"Coolant pump"'],
    ['”Coolant pump“', '"Coolant pump"'],
    ['„Coolant pump“', '"Coolant pump"'],
    ['“Coolant pump"', '"Coolant pump"'],
    // The quotes of French, of German print, of a Polish or Dutch keyboard, single ones, and fullwidth.
    ['«Coolant pump»', '"Coolant pump"'],
    ['»Coolant pump«', '"Coolant pump"'],
    ['‟Coolant pump”', '"Coolant pump"'],
    ['‘Coolant pump’', '"Coolant pump"'],
    ['‹Coolant pump›', '"Coolant pump"'],
    ['＂Coolant pump＂', '"Coolant pump"'],
    ['«Coolant pump"', '"Coolant pump"'],
    ['«“Coolant” pump»', '"“Coolant” pump"'],
    ['“x”', '"x"'],
    ['“”', '""'],
    // What nobody could type otherwise stays as it is inside a title.
    ['“Bärbel’s pump – новый”', '"Bärbel’s pump – новый"'],
    ['“é”', '"é"'],
  ];
  test.each(rows)('%s', (written, plain) => {
    expect(plainForm(written)).toBe(plain);
    expect(fixOf(`part pump ${written} 64.30`)).toBe(plain);
    const block = firstBlock(`part pump ${plain} 64.30`);
    expect(block.problems).toEqual([]);
    expect(block.statements[0]?.tokens[2]?.text).toBe(plain.slice(1, -1));
  });

  test('but not where something stands before or behind it, or where it is not closed', () => {
    expect(plainForm('2“Pump”')).toBe('2"Pump"');
    expect(plainForm('“Pump”2')).toBe('"Pump"2');
    expect(plainForm('“Pump')).toBe('"Pump');
    expect(plainForm('“')).toBe('"');
    expect(plainForm('"Pump”')).toBe('"Pump"');
    for (const written of ['é“Pump”', '“Pump”é', '“Pümp', '"Pümp”']) expect(`${written} ${plainForm(written)}`).toBe(`${written} undefined`);
  });
});

describe('spaces', () => {
  test('every space separator of Unicode stands for the plain space', () => {
    const spaces = every.filter((character) => /\p{Space_Separator}/u.test(character));
    // By hand too: no-break, Ogham, en quad to hair space, narrow no-break, medium mathematical, ideographic.
    expect(spaces.map(codePoint)).toEqual([
      'U+0020', 'U+00A0', 'U+1680', 'U+2000', 'U+2001', 'U+2002', 'U+2003', 'U+2004', 'U+2005', 'U+2006', 'U+2007', 'U+2008', 'U+2009', 'U+200A', 'U+202F', 'U+205F', 'U+3000',
    ]);
    expect(spaces.map((space) => plainForm(`4${space}h`))).toEqual(spaces.map(() => '4 h'));
  });

  test('and before a line for an indentation that is mended', () => {
    for (const space of ['\u00a0', '\u2003', '\u3000']) {
      const block = firstBlock(`part pump\n${space} takes 2`);
      expect(block.problems.map(({ code, at, fix }) => [code, at.start, at.end, fix?.text])).toEqual([['strange-character', 10, 12, '  ']]);
    }
  });

  test('nothing beside them does', () => {
    for (const character of ['\u009f', '\u00a1', '\u167f', '\u1681', '\u1fff', '\u2030', '\u205e', '\u2fff', '\u3001']) expect(`${codePoint(character)} ${plainForm(character)}`).not.toBe(`${codePoint(character)}  `);
  });
});

describe('hidden characters', () => {
  // From the Unicode data of the machine: controls (but tab and line feed), line and paragraph separators, marks of direction
  // (UAX #9), what is shown as nothing but for variation selectors, and the three of interlinear annotation (U+FFF9–U+FFFB).
  const unseen = every.filter((character) => character !== '\t' && character !== '\n'
    && (/[\p{Cc}\p{Bidi_Control}\p{Zl}\p{Zp}\ufff9-\ufffb]/u.test(character) || (/\p{Default_Ignorable_Code_Point}/u.test(character) && !/\p{Variation_Selector}/u.test(character))));

  test('are those that Unicode says nobody sees', () => {
    expect(every.filter((character) => hidden.test(character)).map(codePoint)).toEqual(unseen.map(codePoint));
  });

  test('are left out of the plain form', () => {
    expect(unseen.filter((character) => plainForm(`a${character}b`) !== 'ab').map(codePoint)).toEqual([]);
  });

  test.each([['\u0001', 'U+0001'], ['\u001f', 'U+001F'], ['\u007f', 'U+007F'], ['\u00ad', 'soft hyphen'], ['\u200b', 'zero-width space'], ['\u202e', 'right-to-left override'], ['\ufeff', 'byte order mark']])('%j (%s) is deleted from a name', (character) => {
    expect(plainForm(character)).toBe('');
    expect(fixOf(`part pu${character}mp`)).toBe('pump');
  });
});

describe('what has no plain twin', () => {
  // Letters of other words, signs with a meaning of their own, and the neighbours of the fullwidth forms.
  const alone = ['é', 'ß', 'ж', 'λ', '水', '‘', '’', '€', '£', '×', '½', '…', '🔧', '\uff00', '\uff5f', '\uffe0', '\ufe0f', '\ufffd', '\ud800', '\t', '\n'];
  test.each(alone.map((character) => [codePoint(character), character]))('%s: no plain form, whatever stands beside it', (_, character) => {
    expect([character, `2${character}`, `${character}2`, `\u043e${character}`, `${character}\u200b`].map(plainForm)).toEqual([undefined, undefined, undefined, undefined, undefined]);
  });

  test('is told of without a mend', () => {
    expect(firstBlock('part pümp').problems.map(({ code, fix }) => [code, fix])).toEqual([['strange-character', undefined]]);
  });
});

describe('a fix never leaves a text open', () => {
  const fixes = (line: string) => parse('a.yard', `${line}\n`).blocks.flatMap(({ problems }) => problems).flatMap(({ fix }) => fix?.text ?? []);

  test.each([
    ['a backslash at the end of a title', 'part “a\\” 2', ['"a\\\\"']],
    ['a backslash inside it', 'part “C:\\x” 2', ['"C:\\\\x"']],
    ['an angle quote, with the other one far off', 'part «Coolant pump» 2', ['"Coolant pump"']],
    ['an angle quote that nothing closes', 'part «Coolant pump 2', []],
    ['a quote that another pair would close', 'part «Coolant pump” 2', ['"Coolant pump" 2']],
    ['a closing quote alone', 'part pump” 2', []],
    ['a title in curly quotes', 'part “Coolant pump” 2', ['"Coolant pump"']],
  ])('%s', (_, line, offered) => {
    expect(fixes(line)).toEqual(offered);
  });
});
