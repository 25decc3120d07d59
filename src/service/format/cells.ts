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

/** Some tokens of a line that belong together: `to` is the first that does not. */
export interface Slot {
  readonly part: 'head' | 'name' | 'title' | 'slot';
  readonly from: number;
  readonly to: number;
}

/** Cuts a line by its kind; `under` is the kind of the line above, whose facts may stand here. */
export function cellsOf(statement: Statement, kind: Kind | undefined, under: Kind | undefined): Omit<Cells, 'indent'> {
  const { block } = statement;
  const slots = slotsOf(statement, kind, under);
  const textOf = (part: Slot['part']) => {
    const slot = slots.find((one) => one.part === part);
    return slot === undefined ? undefined : written(statement, slot);
  };
  return {
    head: textOf('head') ?? '',
    name: textOf('name'),
    title: textOf('title'),
    slots: slots.filter(({ part }) => part === 'slot').map((slot) => written(statement, slot)),
    comment: statement.comment === undefined ? undefined : block.text.slice(statement.comment.start, statement.comment.end).replace(/(?<![ \t])[ \t]+$/, ''),
  };
}

/** The slots of a line in the order of its tokens. A fact line is its lead and what it says. */
export function slotsOf({ tokens }: Statement, kind: Kind | undefined, under: Kind | undefined): readonly Slot[] {
  if (kind === undefined) {
    const words = Math.max(1, leadAt(tokens, 0, under));
    return [{ part: 'head', from: 0, to: words }, ...(words < tokens.length ? [{ part: 'slot', from: words, to: tokens.length } as const] : [])];
  }
  const slots: Slot[] = [{ part: 'head', from: 0, to: 1 }];
  let at = 1;
  if (kind.name !== 'none' && tokens[at]?.kind === 'word' && (kind.name === 'required' || tokens[at + 1]?.kind === 'text')) slots.push({ part: 'name', from: at, to: ++at });
  if (kind.title !== 'none' && tokens[at]?.kind === 'text') slots.push({ part: 'title', from: at, to: ++at });
  // A line that has no name of its own and starts with another's, as finds does; where that may be its title too, as behind clocked, both stand in one column.
  else if (kind.name === 'none' && tokens[at]?.kind === 'word' && leadAt(tokens, at, kind) === 0 && startsWithName(kind)) slots.push({ part: kind.title === 'none' ? 'name' : 'title', from: at, to: ++at });
  let start = at;
  for (let i = at; i < tokens.length; i++) {
    const lead = leadAt(tokens, i, kind);
    if (lead === 0) continue;
    // `12 at cost 9.40` is one figure, and a name in a list may look like a lead: neither starts a slot.
    const before = tokens[i - 1];
    const goesOn = before?.kind !== 'text' && (before?.text === 'at' || before?.text === ',');
    if (i > start && !goesOn) {
      slots.push({ part: 'slot', from: start, to: i });
      start = i;
    }
    i += lead - 1;
  }
  if (start < tokens.length) slots.push({ part: 'slot', from: start, to: tokens.length });
  return slots;
}

function startsWithName(kind: Kind): boolean {
  return kind.bares.words.some((key) => kind.fields[key]?.value.refersTo !== undefined && kind.fields[key].value.item === undefined);
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
function written({ tokens, block }: Statement, { from, to }: Slot): string {
  let out = '';
  for (let i = from; i < to; i++) {
    const token = tokens[i] as Token;
    const isMark = token.kind === 'mark';
    const glued = isMark && (token.text === ',' || (token.text === '%' && tokens[i - 1]?.end === token.start));
    out += `${out === '' || glued ? '' : ' '}${block.text.slice(token.start, token.end)}`;
  }
  return out;
}
