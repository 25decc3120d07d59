import { beforeAll, describe, expect, test } from 'vitest';
import { loadTokenizer, type Tokenize } from './tokenize.js';

let tokenize: Tokenize;

beforeAll(async () => {
  tokenize = await loadTokenizer();
  tokenize('part pump "Warm up" 3 h');
});

/**
 * Lines made to send a careless expression into long searches. The language reads lines of up to 2,000 characters;
 * these are five times as long. (The colouring engine itself copies the line once for each captured list.)
 */
const size = 10_000;
const hostile: Readonly<Record<string, string>> = {
  'a long word': `part ${'a'.repeat(size)}`,
  'a long word that ends strangely': `part ${'a-'.repeat(size / 2)}é`,
  'a long number that ends in a letter': `part p "T" ${'1'.repeat(size)}x`,
  'many points': `part p "T" ${'1.'.repeat(size / 2)}`,
  'many commas in a number': `part p "T" ${'1,'.repeat(size / 2)}x`,
  'many names': `option x "T" do ${'a,'.repeat(size / 2)}`,
  'many names and no end': `option x "T" do ${'a , '.repeat(size / 4)}"`,
  'white space': `part${' '.repeat(size)}x`,
  'white space behind a lead word': `part p "T" because${' '.repeat(size)},`,
  'white space after names': `part p "T" because a${' '.repeat(size)}x`,
  'escaped quotes without an end': `note "${'\\"'.repeat(size / 2)}`,
  'backslashes without an end': `note "${'\\'.repeat(size)}`,
  'many quotes': `note ${'"'.repeat(size + 1)}`,
  'many curly quotes': `note ${'“'.repeat(size)}`,
  'lead words only': `labour x "T" ${'with '.repeat(size / 5)}`,
  'slashes': `labour x "T" ${'1 / '.repeat(size / 4)}h`,
  'indentation only': ' '.repeat(size),
};

describe('the time for a line', () => {
  test.each(Object.entries(hostile))('%s', (_, line) => {
    const before = performance.now();
    tokenize(line);
    // Slow for one piece after another, yet far below what quadratic searching would take.
    expect(performance.now() - before).toBeLessThan(1500);
  });
});
