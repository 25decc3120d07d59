import { describe, expect, test } from 'vitest';
import { parse, statementsOf } from '../../src/language/index.js';
import { emitLanguageConfiguration } from '../../src/tools/emit-language-configuration.js';
import { samples } from './samples.js';

interface Configuration {
  readonly wordPattern: string;
  readonly onEnterRules: readonly { readonly beforeText: string; readonly action: { readonly indent: string } }[];
}

const configuration = JSON.parse(emitLanguageConfiguration()['schemas/language-configuration.json'] as string) as Configuration;

/** What pressing Enter behind a line does to the indentation. */
function enterBehind(line: string): string {
  return configuration.onEnterRules.find(({ beforeText }) => new RegExp(beforeText).test(line))?.action.indent ?? 'keep';
}

describe('language-configuration.json', () => {
  test('a double click takes a whole name, number, date or identification number', () => {
    const word = new RegExp(configuration.wordPattern, 'g');
    for (const { text } of samples) {
      for (const statement of statementsOf(parse('x.yard', text))) {
        for (const token of statement.tokens) {
          if (token.kind === 'text' || token.kind === 'mark') continue;
          expect([...statement.block.text.slice(token.start, token.end).matchAll(word)].map(String)).toEqual([token.text]);
        }
      }
    }
    expect('').not.toMatch(new RegExp(configuration.wordPattern));
  });

  test('Enter indents behind lines that have facts below them, and only there', () => {
    expect(enterBehind('option used "Fit a used engine"  # why')).toBe('indent');
    expect(enterBehind('shop "Corner Bay Garage"')).toBe('indent');
    expect(enterBehind('  labour "Swap" 4 h')).toBe('keep');
    expect(enterBehind('part pump "Coolant pump" 64.30 new')).toBe('keep');
    expect(enterBehind('steelyard 1')).toBe('keep');
    expect(enterBehind('shop-two')).toBe('keep');
    expect(enterBehind('# option')).toBe('none');
    expect(enterBehind('')).toBe('keep');
  });
});
