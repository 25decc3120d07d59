/** Everything that helps to write a line: completion, a whole estimate to start from, rows pasted from elsewhere. */
import type { FeatureContext } from '../context.js';
import type { Completing } from '../feature-types.js';
import { completionsAt } from './complete.js';
import { pastedRowsAt } from './paste.js';
import { starterFor } from './starter.js';

export function completing(context: FeatureContext): Completing {
  return {
    completions: (uri, offset, today) => {
      const tree = context.tree(uri);
      return tree === undefined ? [] : completionsAt(tree, { offset, today }, context.weighing(uri), context.host);
    },
    starter: (uri, today) => starterFor(uri, today, context),
    pastedRows: (uri, offset, pasted) => {
      const tree = context.tree(uri);
      return tree === undefined ? undefined : pastedRowsAt(tree, offset, pasted);
    },
  };
}
