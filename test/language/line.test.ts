import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse, releaseTokens, statementsOf, type Tree } from '../../src/language/index.js';
import { diceFor } from '../../src/tools/fuzz/dice.js';
import { mutated, noise } from '../../src/tools/fuzz/mutate.js';

const samples = readdirSync('samples').filter((name) => name.endsWith('.yard')).map((name) => readFileSync(`samples/${name}`, 'utf8'));
const tokensOf = (tree: Tree) => [...statementsOf(tree)].map(({ tokens }) => tokens);

test('tokens that a line let go of come back as they were, whatever the text', () => {
  const texts = fc.oneof(fc.constantFrom(...samples), fc.nat().map((seed) => noise(diceFor(seed, 0))), fc.tuple(fc.nat(), fc.constantFrom(...samples)).map(([seed, text]) => mutated(text, 8, diceFor(seed, 1), text)));
  fc.assert(fc.property(texts, (text) => {
    const tree = parse('a.yard', text);
    const before = tokensOf(tree);
    tree.blocks.forEach(releaseTokens);
    const after = tokensOf(tree);
    expect(after).toEqual(before);
    // Made anew once, and then kept: who asks twice gets the very same ones.
    expect(after.filter((tokens, i) => tokens === before[i])).toEqual([]);
    expect(tokensOf(tree).every((tokens, i) => tokens === after[i])).toBe(true);
  }), { numRuns: 300 });
});
