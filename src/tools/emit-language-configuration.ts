import { fileKinds } from '../vocabulary/index.js';
import { boundary } from './grammar-patterns.js';

/** How the editor types, selects and folds: quotes, words, indentation. */
export function emitLanguageConfiguration(): Record<string, string> {
  const configuration = {
    comments: { lineComment: '#' },
    brackets: [],
    autoClosingPairs: [{ open: '"', close: '"', notIn: ['string', 'comment'] }],
    surroundingPairs: [['"', '"']],
    autoCloseBefore: ' \t\n#,',
    // A plain number with its decimals, or else a run with its hyphens: rear-head, 2026-11-30, 11h.
    wordPattern: '\\d+(?:\\.\\d+)?(?![A-Za-z0-9-])|[A-Za-z0-9][A-Za-z0-9-]*',
    // No increase and decrease patterns: with them the editor's own re-indenting would move lines that stand two
    // steps deep one step out, below another line, and so change what the file says.
    onEnterRules: [
      { beforeText: '^\\s*#.*$', action: { indent: 'none' } },
      { beforeText: `^(?:${kindsWithFactsBelow().join('|')})${boundary}.*$`, action: { indent: 'indent' } },
    ],
    folding: { offSide: true },
  };
  return { 'schemas/language-configuration.json': `${JSON.stringify(configuration, null, 2)}\n` };
}

/** Kinds whose lines usually have facts below them, as their examples show; parts stand in rows of single lines. */
function kindsWithFactsBelow(): readonly string[] {
  return fileKinds.filter((kind) => kind.example.includes('\n')).map((kind) => kind.word);
}
