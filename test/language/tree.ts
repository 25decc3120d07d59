import type { Block, Statement, Tree } from '../../src/language/index.js';

/** A tree as plain data, without the references that go round in circles. */
export function dump(tree: Tree): unknown {
  return { uri: tree.uri, text: tree.text, starts: tree.starts, blocks: tree.blocks.map(dumpBlock) };
}

function dumpBlock(block: Block): unknown {
  const { uri, text, lineEnds, comments } = block;
  return { uri, text, lineEnds, comments, statements: block.statements.map(dumpStatement), problems: block.problems.map(({ at, fix, ...rest }) => ({ ...rest, from: at.start, to: at.end, fix: fix?.text })) };
}

function dumpStatement({ tokens, comment, indent, line, children }: Statement): unknown {
  return { tokens, comment, indent, line, children: children.map(dumpStatement) };
}
