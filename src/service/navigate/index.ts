import type { FeatureContext } from '../context.js';
import type { Navigating } from '../feature-types.js';
import { foldingOf } from './folding.js';
import { definitionAt, highlightsAt, linksIn, referencesAt } from './references.js';
import { prepareRenameAt, renameAt } from './rename.js';
import { selectionAt } from './selection.js';
import { symbolsOf } from './symbols.js';
import { totalsUsingAt } from './totals-using.js';
import { workspaceSymbolsIn } from './workspace-symbols.js';

/** Getting about in a file and between files. */
export function navigating(context: FeatureContext): Navigating {
  const { tree, weighing } = context;
  return {
    definition: (uri, offset) => definitionAt(context, uri, offset),
    references: (uri, offset, others) => referencesAt(context, uri, offset, others),
    prepareRename: (uri, offset) => prepareRenameAt(context, uri, offset),
    rename: (uri, offset, name, others) => renameAt(context, uri, offset, name, others),
    symbols: (uri) => {
      const found = tree(uri);
      return found === undefined ? [] : symbolsOf(found, weighing(uri));
    },
    workspaceSymbols: (query, uris) => workspaceSymbolsIn(context, query, uris),
    folding: (uri) => {
      const found = tree(uri);
      return found === undefined ? [] : foldingOf(found);
    },
    selectionRanges: (uri, offset) => {
      const found = tree(uri);
      return found === undefined ? [] : selectionAt(found, offset);
    },
    highlights: (uri, offset) => highlightsAt(context, uri, offset),
    links: (uri) => linksIn(context, uri),
    totalsUsing: (uri, offset) => {
      const found = tree(uri);
      return found === undefined ? [] : totalsUsingAt(found, offset, weighing(uri));
    },
  };
}
