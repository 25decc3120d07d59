import { describe, expect, test } from 'vitest';
import { hidden } from '../../src/language/index.js';
import { jsonText, plain } from '../../src/report/index.js';
import { createLanguageService } from '../../src/service/index.js';

/** Every character there can be, without the halves of pairs. */
const EVERY = Array.from({ length: 0x110000 }, (_, code) => code).filter((code) => code < 0xd800 || code > 0xdfff).map((code) => String.fromCodePoint(code));
const HIDDEN = EVERY.filter((one) => hidden.test(one));
const codes = (characters: readonly string[]) => characters.map((one) => (one.codePointAt(0) as number).toString(16));

// By the Unicode properties that the engine knows: Bidi_Control (UAX #9), the general categories (UAX #44) and
// Default_Ignorable_Code_Point of the Unicode Character Database.
describe('characters that can’t be seen', () => {
  const unseen = /[\p{Cc}\p{Bidi_Control}\p{Zl}\p{Zp}]|(?!\p{Variation_Selector})\p{Default_Ignorable_Code_Point}/u;
  const mayBeUnseen = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}]/u;

  test('are all known as hidden, but for the tab and the line feed, and nothing else is', () => {
    expect(codes(EVERY.filter((one) => unseen.test(one) && !hidden.test(one)))).toEqual(['9', 'a']);
    expect(codes(HIDDEN.filter((one) => !mayBeUnseen.test(one)))).toEqual([]);
  });

  test('are each shown by their code in what is printed, and nothing else is touched', () => {
    expect(codes(EVERY.filter((one) => (plain(one) === one) === (hidden.test(one) || one === '\t' || one === '\n')))).toEqual([]);
    expect(plain('a\u202eb\u{e0041}c\u009bd\te\nf')).toBe('a‹U+202E›b‹U+E0041›c‹U+009B›d‹U+0009›e‹U+000A›f');
  });

  test('are written as their code in JSON, and come back as they were (RFC 8259, section 7)', () => {
    const all = EVERY.join('');
    const text = jsonText({ [all]: all });
    expect(hidden.test(text)).toBe(false);
    expect(Object.entries(JSON.parse(text) as object).flat().every((one) => one === all)).toBe(true);
  });

  // The last plane has thousands that are alike: its ends, and the tags, stand for them.
  const told = HIDDEN.filter((one) => one !== '\r' && (one.length === 1 || /[\u{1bca0}-\u{1d17a}\u{e0000}-\u{e007f}\u{e00ff}\u{e01f0}\u{e0fff}]/u.test(one)));
  test.each([
    ['a title', 'hidden-character', (one: string) => `steelyard 1\nnote "Price ${one}03.46"\n`],
    ['a comment', 'hidden-character', (one: string) => `steelyard 1\n# Price ${one}03.46\n`],
    ['a name', 'strange-character', (one: string) => `steelyard 1\noption a${one}b "One"\n`],
    ['a figure', 'strange-character', (one: string) => `steelyard 1\nfee "Tow" 12${one}0.00\n`],
  ])('are flagged in %s as %s, by their code and at their place', (_, code, textWith) => {
    expect(told.length).toBeGreaterThan(250);
    const unflagged = told.filter((one) => {
      const text = textWith(one);
      const at = text.indexOf(one);
      const found = createLanguageService({ read: () => ({ text }), resolvePath: () => undefined }).diagnostics('a.yard').find((own) => own.code === code);
      return found === undefined || found.range.start > at || found.range.end < at + one.length || !found.text.includes(`U+${(codes([one])[0] as string).toUpperCase().padStart(4, '0')}`) || hidden.test(found.text);
    });
    expect(codes(unflagged)).toEqual([]);
  });
});
