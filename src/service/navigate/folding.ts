import type { Block, Statement, Tree } from '../../language/index.js';
import type { FoldingRange } from '../feature-types.js';
import { blocksByLine, lastLineOf } from './lines.js';

/** Lines with lines below them, and comments of several lines. Ranges lie within each other or apart. */
export function foldingOf(tree: Tree): readonly FoldingRange[] {
  const found: FoldingRange[] = [];
  for (const { block, firstLine } of blocksByLine(tree)) {
    const visit = (statement: Statement): void => {
      const last = lastLineOf(statement);
      if (last > statement.line) found.push({ startLine: firstLine + statement.line, endLine: firstLine + last, kind: 'lines' });
      statement.children.forEach(visit);
    };
    block.statements.forEach(visit);
    found.push(...commentRuns(block, firstLine));
  }
  return found.sort((a, b) => a.startLine - b.startLine || b.endLine - a.endLine);
}

/** Comments on lines of their own, one below the other. A block holds all comments up to the next line at the edge. */
function commentRuns(block: Block, firstLine: number): FoldingRange[] {
  if (block.comments.length < 2) return [];
  const behind = new Set<number>();
  const visit = ({ line, comment, children }: Statement): void => {
    if (comment !== undefined) behind.add(line);
    children.forEach(visit);
  };
  block.statements.forEach(visit);
  const own = block.comments.filter(({ line }) => !behind.has(line)).map(({ line }) => line);
  const runs: FoldingRange[] = [];
  for (let from = 0; from < own.length;) {
    let to = from;
    while (own[to + 1] === (own[to] as number) + 1) to++;
    if (to > from) runs.push({ startLine: firstLine + (own[from] as number), endLine: firstLine + (own[to] as number), kind: 'comment' });
    from = to + 1;
  }
  return runs;
}
