// Against the language's own `slice`.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { WordTable } from '../../src/language/word-table.js';

test('a piece is what slice gives, whatever stood at its place in the table before', () => {
  // Few letters and one place for all: pieces that are longer, shorter, alike but for one letter, and found elsewhere.
  const piece = fc.tuple(fc.stringMatching(/^[ab]{0,16}$/), fc.nat(16), fc.nat(16));
  fc.assert(fc.property(fc.array(piece, { maxLength: 20 }), fc.constantFrom(0, 7), (pieces, hash) => {
    const table = new WordTable();
    for (const [text, one, other] of pieces) {
      const [start, end] = [Math.min(one, other, text.length), Math.min(Math.max(one, other), text.length)];
      expect(table.slice(text, start, end, hash)).toBe(text.slice(start, end));
    }
  }), { numRuns: 300 });
});

test('a piece that ends where another begins is none of it', () => {
  const table = new WordTable();
  expect(table.slice('part pump', 5, 9, 1)).toBe('pump');
  expect(table.slice('pump part', 5, 9, 1)).toBe('part');
  expect(table.slice('labour pump', 0, 6, 1)).toBe('labour');
  expect(table.slice('labour pump', 7, 11, 1)).toBe('pump');
});
