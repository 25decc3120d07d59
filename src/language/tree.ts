import { Holders, type Holder } from './slot.js';
import type { Token } from './token.js';

/** One line with its indented lines below it. */
export interface Statement {
  readonly block: Block;
  /** Never empty: a line without tokens is not a statement. */
  readonly tokens: readonly Token[];
  readonly comment: Comment | undefined;
  readonly indent: number;
  /** Line within the block, from 0. */
  readonly line: number;
  readonly children: readonly Statement[];
}

/** From `#` to the end of the line, offsets within the block. */
export interface Comment {
  readonly start: number;
  readonly end: number;
  readonly line: number;
}

/** What later rooms keep by blocks. */
export const heldByBlocks = new Holders();

/**
 * A top-level line with all that stands below it, up to the next top-level line. Blocks know nothing of their
 * place in the file, so an edit elsewhere leaves them, and all that was computed from them, as they are.
 */
export interface Block extends Holder {
  readonly uri: string;
  readonly text: string;
  /** Number of line ends in `text`. */
  readonly lineEnds: number;
  /** Top-level statements; more than one only where the first lines of a file are indented. */
  readonly statements: readonly Statement[];
  /** Every comment, those on lines of their own too. */
  readonly comments: readonly Comment[];
  readonly problems: readonly Problem[];
}

/** A place in a block. `Tree.range` turns it into file offsets; nothing else does. */
export interface Span {
  readonly block: Block;
  readonly start: number;
  readonly end: number;
}

/**
 * How much a problem matters. `error`: the line can't be priced as written. `warning`: priced, but probably not
 * what was meant. `advice`: worth a look.
 */
export type Severity = 'error' | 'warning' | 'advice';

/** What a problem says, always in three parts. */
export interface Message {
  /** What is wrong. */
  readonly what: string;
  /** Why it matters to the quote. */
  readonly why: string;
  /** What to write instead. */
  readonly instead: string;
}

/** A one-step edit that mends the problem. */
export interface Fix {
  readonly title: string;
  readonly at: Span;
  readonly text: string;
}

/** A problem found: which rule, where, and the facts its words are made of. */
export interface Problem {
  readonly code: string;
  readonly severity: Severity;
  readonly at: Span;
  readonly message: Message;
  readonly fix: Fix | undefined;
  /** Another place that the problem is about, such as the first of two lines with one name. */
  readonly related: { readonly at: Span; readonly says: string } | undefined;
}

/** A parsed file. Joining the texts of its blocks gives the file back, byte for byte. */
export interface Tree {
  readonly uri: string;
  readonly text: string;
  readonly blocks: readonly Block[];
  /** Start offset of each block in `text`. */
  readonly starts: readonly number[];
}

export interface Range {
  readonly start: number;
  readonly end: number;
}

function spanOfTokens(block: Block, tokens: readonly Token[]): Span {
  const first = tokens[0];
  const last = tokens[tokens.length - 1];
  return { block, start: first?.start ?? 0, end: last?.end ?? 0 };
}

export function spanOfStatement(statement: Statement): Span {
  return spanOfTokens(statement.block, statement.tokens);
}

/** Every statement of a tree, in the order of the lines. */
export function* statementsOf(tree: Tree): Generator<Statement> {
  for (const block of tree.blocks) for (const statement of block.statements) yield* withChildren(statement);
}

function* withChildren(statement: Statement): Generator<Statement> {
  yield statement;
  for (const child of statement.children) yield* withChildren(child);
}
