import type { Statement, Token } from '../../language/index.js';
import type { Kind } from '../../vocabulary/index.js';

/** A line cut into what is aligned: its first word, name, title, and its slots, each with its words as written. */
export interface Cells {
  readonly head: string;
  readonly name: string | undefined;
  readonly title: string | undefined;
  /** Each slot starts with a lead word, except that the first may start with a figure. */
  readonly slots: readonly string[];
  readonly comment: string | undefined;
  readonly indent: number;
}

/** Cuts a line by its kind; `under` is the kind of the line above, whose facts may stand here. */
export function cellsOf(statement: Statement, kind: Kind | undefined, under: Kind | undefined): Omit<Cells, 'indent'> {
  const { tokens, block } = statement;
  const comment = statement.comment === undefined ? undefined : block.text.slice(statement.comment.start, statement.comment.end).trimEnd();
  const head = tokens[0] as Token;
  if (kind === undefined) {
    const lead = leadAt(tokens, 0, under);
    const words = Math.max(1, lead);
    const rest = written(statement, words, tokens.length);
    return { head: written(statement, 0, words), name: undefined, title: undefined, slots: rest === '' ? [] : [rest], comment };
  }
  let at = 1;
  let name: string | undefined;
  let title: string | undefined;
  if (kind.name !== 'none' && tokens[at]?.kind === 'word' && (kind.name === 'required' || tokens[at + 1]?.kind === 'text')) name = written(statement, at, ++at);
  if (kind.title !== 'none' && tokens[at]?.kind === 'text') title = written(statement, at, ++at);
  const slots: string[] = [];
  let start = at;
  for (let i = at; i < tokens.length; i++) {
    const lead = leadAt(tokens, i, kind);
    if (lead === 0) continue;
    // `12 at cost 9.40` is one figure: a lead behind `at` does not start a slot.
    if (i > start && tokens[i - 1]?.text !== 'at') {
      slots.push(written(statement, start, i));
      start = i;
    }
    i += lead - 1;
  }
  if (start < tokens.length) slots.push(written(statement, start, tokens.length));
  return { head: head.text, name, title, slots, comment };
}

/** How many words of a lead of this kind stand here; 0 where none does. */
function leadAt(tokens: readonly Token[], at: number, kind: Kind | undefined): number {
  const first = tokens[at];
  if (first?.kind !== 'word' || kind === undefined) return 0;
  const second = tokens[at + 1];
  if (second?.kind === 'word' && kind.leads.has(`${first.text} ${second.text}`)) return 2;
  return kind.leads.has(first.text) ? 1 : 0;
}

/** Tokens as written, with one space between them: none before a comma, and before a percent sign only where there was one. */
function written(statement: Statement, from: number, to: number): string {
  let out = '';
  for (let i = from; i < to; i++) {
    const token = statement.tokens[i] as Token;
    const glued = token.text === ',' || (token.text === '%' && statement.tokens[i - 1]?.end === token.start);
    out += `${out === '' || glued ? '' : ' '}${statement.block.text.slice(token.start, token.end)}`;
  }
  return out;
}
