import type { FeatureContext } from '../context.js';
import type { Showing } from '../feature-types.js';
import { inlayHintsIn } from './inlay-hints.js';
import { lensesIn } from './lenses.js';
import { semanticTokensOf } from './semantic-tokens.js';
import { statusOf } from './status.js';

/** What an editor shows quietly beside the text. */
export function showing({ tree, weighing }: FeatureContext): Showing {
  return {
    inlayHints: (uri, range) => {
      const found = tree(uri);
      return found === undefined ? [] : inlayHintsIn(found, range, weighing(uri));
    },
    lenses: (uri) => {
      const found = tree(uri);
      return found === undefined ? [] : lensesIn(found, weighing(uri));
    },
    semanticTokens: (uri) => {
      const found = tree(uri);
      return found === undefined ? [] : semanticTokensOf(found, weighing(uri));
    },
    status: (uri) => (tree(uri) === undefined ? undefined : statusOf(weighing(uri))),
  };
}
