/** A small reader of ISO/IEC 14977, enough for the written grammar: to check it and to run it. */
export type Expression =
  | { readonly is: 'terminal'; readonly text: string }
  | { readonly is: 'special'; readonly text: string }
  | { readonly is: 'name'; readonly name: string }
  | { readonly is: 'sequence' | 'choice'; readonly items: readonly Expression[] }
  | { readonly is: 'optional' | 'repeated'; readonly item: Expression }
  | { readonly is: 'times'; readonly count: number; readonly item: Expression };

export interface Production {
  readonly name: string;
  readonly body: Expression;
}

const piece = /\s+|\(\*[\s\S]*?\*\)|"([^"]*)"|'([^']*)'|\?([^?]*)\?|(\d+)\s*\*|([A-Za-z][A-Za-z0-9]*(?:\s+[A-Za-z][A-Za-z0-9]*)*)|([=,|;()[\]{}])/y;

type Piece = { readonly kind: 'terminal' | 'special' | 'times' | 'name' | 'sign'; readonly text: string };

export function readEbnf(text: string): readonly Production[] {
  const pieces = split(text);
  let at = 0;
  const productions: Production[] = [];
  while (at < pieces.length) {
    const name = take('name');
    sign('=');
    const body = choice();
    sign(';');
    productions.push({ name, body });
  }
  return productions;

  function choice(): Expression {
    const items = [sequence()];
    while (isSign('|')) items.push(sequence());
    return items.length === 1 ? (items[0] as Expression) : { is: 'choice', items };
  }
  function sequence(): Expression {
    const items = [item()];
    while (isSign(',')) items.push(item());
    return items.length === 1 ? (items[0] as Expression) : { is: 'sequence', items };
  }
  function item(): Expression {
    const next = pieces[at++];
    if (next === undefined) throw new Error('the grammar ends too early');
    if (next.kind === 'terminal' || next.kind === 'special') return { is: next.kind, text: next.text };
    if (next.kind === 'name') return { is: 'name', name: next.text };
    if (next.kind === 'times') return { is: 'times', count: Number(next.text), item: item() };
    const close = { '(': ')', '[': ']', '{': '}' }[next.text];
    if (close === undefined) throw new Error(`${next.text} stands where something to write belongs`);
    const inner = choice();
    sign(close);
    return next.text === '(' ? inner : { is: next.text === '[' ? 'optional' : 'repeated', item: inner };
  }
  function isSign(text: string): boolean {
    if (pieces[at]?.kind !== 'sign' || pieces[at]?.text !== text) return false;
    at++;
    return true;
  }
  function sign(text: string): void {
    if (!isSign(text)) throw new Error(`${text} expected before ${pieces[at]?.text ?? 'the end'} (piece ${at})`);
  }
  function take(kind: Piece['kind']): string {
    const next = pieces[at++];
    if (next?.kind !== kind) throw new Error(`a ${kind} expected, not ${next?.text ?? 'the end'}`);
    return next.text;
  }
}

function split(text: string): readonly Piece[] {
  const pieces: Piece[] = [];
  piece.lastIndex = 0;
  while (piece.lastIndex < text.length) {
    const from = piece.lastIndex;
    const found = piece.exec(text);
    if (found === null) throw new Error(`not EBNF: ${text.slice(from, from + 30)}`);
    const [, double, single, special, times, name, sign] = found;
    if (double !== undefined || single !== undefined) pieces.push({ kind: 'terminal', text: double ?? single ?? '' });
    else if (special !== undefined) pieces.push({ kind: 'special', text: special.trim() });
    else if (times !== undefined) pieces.push({ kind: 'times', text: times });
    else if (name !== undefined) pieces.push({ kind: 'name', text: name.replace(/\s+/g, ' ') });
    else if (sign !== undefined) pieces.push({ kind: 'sign', text: sign });
  }
  return pieces;
}

/** Every name that an expression uses. */
export function namesIn(expression: Expression): readonly string[] {
  switch (expression.is) {
    case 'name': return [expression.name];
    case 'sequence':
    case 'choice': return expression.items.flatMap(namesIn);
    case 'optional':
    case 'repeated':
    case 'times': return namesIn(expression.item);
    default: return [];
  }
}

/** What the grammar's smallest pieces match at a place of the input: the place behind, or undefined. */
export interface Input {
  readonly length: number;
  terminal(text: string, at: number): number | undefined;
  /** For names that the input knows itself, such as a whole number; `undefined` leaves them to the grammar. */
  name(name: string, at: number): readonly number[] | undefined;
  special(text: string, at: number): number | undefined;
}

/** Whether the whole input can be derived from `start`. Tries every way, each once. */
export function derives(grammar: readonly Production[], start: string, input: Input): boolean {
  const bodies = new Map(grammar.map(({ name, body }) => [name, body]));
  const known = new Map<string, ReadonlySet<number>>();
  const one = (at: number | undefined): ReadonlySet<number> => new Set(at === undefined ? [] : [at]);

  function from(expression: Expression, at: number): ReadonlySet<number> {
    switch (expression.is) {
      case 'terminal': return one(input.terminal(expression.text, at));
      case 'special': return one(input.special(expression.text, at));
      case 'name': return named(expression.name, at);
      case 'choice': return new Set(expression.items.flatMap((item) => [...from(item, at)]));
      case 'sequence': return expression.items.reduce((ends: ReadonlySet<number>, item) => all(ends, item), new Set([at]));
      case 'times': return Array.from({ length: expression.count }, () => expression.item).reduce((ends: ReadonlySet<number>, item) => all(ends, item), new Set([at]));
      case 'optional': return new Set([at, ...from(expression.item, at)]);
      case 'repeated': {
        const ends = new Set([at]);
        for (const end of ends) for (const next of from(expression.item, end)) ends.add(next); // a set grows while it is walked
        return ends;
      }
    }
  }
  function all(ends: ReadonlySet<number>, item: Expression): ReadonlySet<number> {
    return new Set([...ends].flatMap((end) => [...from(item, end)]));
  }
  function named(name: string, at: number): ReadonlySet<number> {
    const key = `${at} ${name}`;
    let ends = known.get(key);
    if (ends === undefined) {
      const own = input.name(name, at);
      const body = bodies.get(name);
      if (own === undefined && body === undefined) throw new Error(`${name} is not defined`);
      ends = own === undefined ? from(body as Expression, at) : new Set(own);
      known.set(key, ends);
    }
    return ends;
  }
  return named(start, 0).has(input.length);
}
