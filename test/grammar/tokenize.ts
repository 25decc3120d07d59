import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import oniguruma from 'vscode-oniguruma';
import textmate, { type IGrammar, type StateStack } from 'vscode-textmate';
import { emitGrammar } from '../../src/tools/emit-grammar.js';

/** One coloured piece of a line. */
export interface Piece {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly scopes: readonly string[];
}

export type Tokenize = (text: string) => readonly (readonly Piece[])[];

/** Loads the grammar as the emitter makes it now, so a stale file on disk can't hide a failure. */
export async function loadTokenizer(): Promise<Tokenize> {
  const wasm = path.join(path.dirname(createRequire(import.meta.url).resolve('vscode-oniguruma')), 'onig.wasm');
  await oniguruma.loadWASM(new Uint8Array(readFileSync(wasm)).buffer);
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: () => Promise.resolve(textmate.parseRawGrammar(emitGrammar()['schemas/steelyard.tmLanguage.json'] as string, 'grammar.json')),
  });
  const grammar = (await registry.loadGrammar('source.steelyard')) as IGrammar;
  return (text) => {
    let state: StateStack = textmate.INITIAL;
    return text.split('\n').map((line) => {
      const result = grammar.tokenizeLine(line, state);
      state = result.ruleStack;
      return result.tokens
        .map(({ startIndex, endIndex, scopes }) => ({ start: startIndex, end: Math.min(endIndex, line.length), text: line.slice(startIndex, endIndex), scopes }))
        .filter(({ start, end }) => end > start);
    });
  };
}

/** The scopes at one column, outermost first; `has` takes the beginning of a scope, as themes do. */
export function scopesAt(pieces: readonly Piece[], column: number): readonly string[] {
  return pieces.find(({ start, end }) => start <= column && column < end)?.scopes ?? [];
}

export function has(scopes: readonly string[], wanted: string): boolean {
  return scopes.some((scope) => scope === wanted || scope.startsWith(`${wanted}.`));
}
