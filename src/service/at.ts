import type { Block, Range, Span, Statement, Token, Tree } from '../language/index.js';
import { fileKinds, readBlock, type Kind, type Name, type Record } from '../vocabulary/index.js';
import { referencesOf, type Option } from '../estimate/index.js';

/** Where an offset is: the line it stands on, what lines stand above it, and the word under it. */
export interface At {
  readonly block: Block;
  /** Start of the block in the file. */
  readonly start: number;
  /** The line's statement, or undefined on an empty line or in a comment of its own. */
  readonly statement: Statement | undefined;
  /** The lines it stands below, the nearest last. */
  readonly above: readonly Statement[];
  /** The token that the offset touches, the later one between two. */
  readonly token: Token | undefined;
}

const top: ReadonlyMap<string, Kind> = new Map(fileKinds.map((kind) => [kind.word, kind]));

export function blockAt(tree: Tree, offset: number): { readonly block: Block; readonly start: number } | undefined {
  let low = 0;
  let high = tree.starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((tree.starts[middle] as number) <= offset) low = middle;
    else high = middle - 1;
  }
  const block = tree.blocks[low];
  return block === undefined ? undefined : { block, start: tree.starts[low] as number };
}

export function locate(tree: Tree, offset: number): At | undefined {
  const found = blockAt(tree, offset);
  if (found === undefined) return undefined;
  const { block, start } = found;
  // A line lets go of its tokens when it is read: whoever holds one of them must not be overtaken by that.
  readBlock(block);
  const local = offset - start;
  const lineStart = block.text.lastIndexOf('\n', local - 1) + 1;
  const newline = block.text.indexOf('\n', local);
  const lineEnd = newline < 0 ? block.text.length : newline;
  let above: readonly Statement[] = [];
  let statement: Statement | undefined;
  const visit = (list: readonly Statement[], trail: readonly Statement[]): void => {
    for (const one of list) {
      const at = one.tokens[0]?.start ?? 0;
      if (at >= lineStart && at <= lineEnd) {
        statement = one;
        above = trail;
        return;
      }
      visit(one.children, [...trail, one]);
      if (statement !== undefined) return;
    }
  };
  visit(block.statements, []);
  if (statement === undefined) above = linesAbove(block, lineStart, local - lineStart);
  const token = statement?.tokens.filter((one) => one.start <= local && local <= one.end).pop();
  return { block, start, statement, above, token };
}

/** What a new line at this indentation would stand below. */
function linesAbove(block: Block, lineStart: number, indent: number): readonly Statement[] {
  const trail: Statement[] = [];
  let list: readonly Statement[] = block.statements;
  for (;;) {
    const last = [...list].reverse().find((one) => (one.tokens[0]?.start ?? 0) < lineStart);
    if (last === undefined || last.indent >= indent) return trail;
    trail.push(last);
    list = last.children;
  }
}

/** The kind of a line, from the lines above it; undefined for a fact line or an unknown word. */
export function kindOf(statement: Statement, above: readonly Statement[]): Kind | undefined {
  const words = [...above, statement].map((one) => (one.tokens[0]?.kind === 'text' ? '' : (one.tokens[0]?.text ?? '')));
  let kinds: ReadonlyMap<string, Kind> = top;
  let kind: Kind | undefined;
  for (const word of words) {
    kind = kinds.get(word);
    if (kind === undefined) return undefined;
    kinds = kind.childByWord;
  }
  return kind;
}

/** The kind whose facts may stand on a line below these lines. */
export function kindAbove(above: readonly Statement[]): Kind | undefined {
  const last = above[above.length - 1];
  return last === undefined ? undefined : kindOf(last, above.slice(0, -1));
}

/** The line that says an option. Selling the vehicle as it stands has none of its own: it is said where the vehicle's value unrepaired is. */
export function statementOf({ record, at, written }: Pick<Option, 'record' | 'at' | 'written'>): Statement {
  if (written) return record.statement;
  return record.statement.children.find(({ tokens }) => (tokens[0]?.start ?? Infinity) <= at.start && at.end <= (tokens[tokens.length - 1]?.end ?? 0)) ?? record.statement;
}

/** A name where it is written: the line that gives it, or a line that uses it. */
export interface Mention {
  readonly name: string;
  /** The kinds it may stand for; one where it is given. */
  readonly kinds: readonly string[];
  readonly at: Span;
  readonly gives: boolean;
  /** True where the slot understands the word without a line that gives it, such as `in-car`. */
  readonly builtIn: boolean;
  readonly record: Record;
}

/** Every name in some records, where it is given and where it is used. */
export function* mentionsIn(records: readonly Record[]): Generator<Mention> {
  for (const record of records) {
    if (record.name !== undefined) yield { name: record.name.name, kinds: [record.kind.word], at: record.name.at, gives: true, builtIn: false, record };
    for (const { key, refersTo, builtIn } of referencesOf(record.kind)) {
      const value = record.values[key] as Name | readonly Name[] | undefined;
      if (value === undefined) continue;
      for (const one of Array.isArray(value) ? (value as readonly Name[]) : [value as Name]) yield { name: one.name, kinds: refersTo, at: one.at, gives: false, builtIn: Object.hasOwn(builtIn, one.name), record };
    }
    yield* mentionsIn(record.children);
  }
}

export function rangeAt(start: number, part: { readonly start: number; readonly end: number }): Range {
  return { start: start + part.start, end: start + part.end };
}
