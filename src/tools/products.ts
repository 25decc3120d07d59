import { emitEbnf } from './emit-ebnf.js';
import { emitGrammar } from './emit-grammar.js';
import { emitLanguageConfiguration } from './emit-language-configuration.js';
import { emitManual } from './emit-manual.js';
import { emitSchemas } from './emit-schemas.js';

/** Every generated file: its path in the repository and its text. */
export function products(): Readonly<Record<string, string>> {
  return {
    ...emitGrammar(),
    ...emitLanguageConfiguration(),
    ...emitEbnf(),
    ...emitSchemas(),
    ...emitManual(),
  };
}
