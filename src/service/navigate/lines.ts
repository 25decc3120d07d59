import type { Block, Statement, Tree } from '../../language/index.js';

/** The last line of a statement with all that stands below it, within its block. */
export function lastLineOf(statement: Statement): number {
  return lastBelow(statement).line;
}

/** Where a statement with all that stands below it ends: behind its last word, or the comment behind that. */
export function endOf(statement: Statement): number {
  const last = lastBelow(statement);
  return Math.max(last.tokens[last.tokens.length - 1]?.end ?? 0, last.comment?.end ?? 0);
}

function lastBelow(statement: Statement): Statement {
  let last = statement;
  for (let below = last.children[last.children.length - 1]; below !== undefined; below = last.children[last.children.length - 1]) last = below;
  return last;
}

/** Every block with the line it starts on. */
export function* blocksByLine(tree: Tree): Generator<{ readonly block: Block; readonly firstLine: number }> {
  let firstLine = 0;
  for (const block of tree.blocks) {
    yield { block, firstLine };
    firstLine += block.lineEnds;
  }
}
