import type { Span, Statement } from '../../language/index.js';
import type { Leaf } from '../tape.js';

/** The line that a figure is written on, in words that stay the same when other lines come or go. */
export interface WrittenLine {
  /** The kind of line, and its name or title. */
  readonly key: string;
  /** The title, or the name, or the kind of line. */
  readonly title: string;
  readonly statement: Statement | undefined;
}

/** The line with a title or name on or below which something is written. */
export function lineAt(at: Span): WrittenLine {
  let found: WrittenLine = { key: '', title: '', statement: undefined };
  let above = '';
  let statement = lastBefore(at.block.statements, at);
  while (statement !== undefined) {
    const words = wordsOf(statement);
    above = `${above}/${words.key}`;
    if (words.title !== undefined) found = { key: above, title: words.title, statement };
    statement = lastBefore(statement.children, at);
  }
  return found;
}

/** Statements come in the order of the text. Halved, not gone through: each figure asks, and a long list has thousands. */
function lastBefore(statements: readonly Statement[], at: Span): Statement | undefined {
  let from = 0;
  for (let to = statements.length; from < to;) {
    const middle = (from + to) >> 1;
    if ((statements[middle]?.tokens[0]?.start ?? Infinity) <= at.start) from = middle + 1;
    else to = middle;
  }
  return statements[from - 1];
}

function wordsOf({ tokens }: Statement): { readonly key: string; readonly title: string | undefined } {
  const [head, second, third] = tokens;
  const title = second?.kind === 'text' ? second.text : third?.kind === 'text' ? third.text : undefined;
  const name = second?.kind === 'word' && head !== second ? second.text : undefined;
  return { key: `${head?.text ?? ''} ${name ?? title ?? ''}`, title: title ?? (NAMED_ONLY.has(head?.text ?? '') ? name : undefined) };
}

/** Kinds of line whose title may be left out. */
const NAMED_ONLY = new Set(['rate', 'tax']);

/**
 * A key for each leaf that depends on its own line and on nothing else, so that a line more or less in the file leaves
 * the draws of all others as they were. Figures of one line are told apart by what they are, then by their order.
 */
export function keysOf(leaves: readonly Leaf[]): ReadonlyMap<Leaf, string> {
  const taken = new Map<string, number>();
  const keys = new Map<Leaf, string>();
  for (const leaf of leaves) {
    const plain = `${lineAt(leaf.at).key}|${leaf.figure.label}`;
    const before = taken.get(plain) ?? 0;
    taken.set(plain, before + 1);
    keys.set(leaf, before === 0 ? plain : `${plain}|${before + 1}`);
  }
  return keys;
}
