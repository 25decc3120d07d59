import type { Token } from '../../language/index.js';
import { units, type Dimension, type Field, type Kind, type ValueType } from '../../vocabulary/index.js';

/** What a line waits for where it ends. */
export interface Waits {
  /** A word that leads to a slot, or a word that stands for itself. */
  readonly slots: boolean;
  /** The slot whose value starts here or goes on behind a comma. */
  readonly value: string | undefined;
  /** Slots whose figure has been written and may take a unit. */
  readonly unitOf: readonly string[];
  /** True behind a first bare figure, which `at` makes a quantity. */
  readonly at: boolean;
  /** True behind that `at`. */
  readonly behindAt: boolean;
  /** True where the line's own name or title comes next, which only the writer knows. */
  readonly own: boolean;
}

/** What a line says up to somewhere. */
export interface Walked {
  readonly waits: Waits;
  readonly said: ReadonlySet<string>;
  /** Words of each list, as far as it goes. */
  readonly listed: ReadonlyMap<string, readonly string[]>;
}

const nothing: Waits = { slots: false, value: undefined, unitOf: [], at: false, behindAt: false, own: false };
const unitWords: ReadonlyMap<string, Dimension> = new Map(units.map((unit) => [unit.word, unit.dimension]));

/** Goes over a head line the way the vocabulary's reader does, but stops for nothing: most lines are half written. */
export function walkHead(kind: Kind, tokens: readonly Token[]): Walked {
  const said = new Set<string>();
  const listed = new Map<string, readonly string[]>();
  let i = 1;
  if (kind.name !== 'none') {
    const token = tokens[i];
    if (token === undefined) return { waits: { ...nothing, own: true, slots: kind.name === 'optional' && kind.title !== 'required' }, said, listed };
    if (token.kind === 'word' && (kind.name === 'required' || tokens[i + 1]?.kind === 'text' || (leadAt(kind, tokens, i) === undefined && !isBareWord(kind, token)))) i++;
  }
  if (kind.title !== 'none') {
    if (tokens[i]?.kind === 'text') i++;
    else if (tokens[i] === undefined) return { waits: { ...nothing, own: true, slots: kind.title === 'optional' }, said, listed };
  }
  let waits: Waits = { ...nothing, slots: true };
  while (i < tokens.length) {
    const token = tokens[i] as Token;
    const lead = leadAt(kind, tokens, i);
    const bare = lead === undefined ? kind.bares.words.find((key) => !said.has(key) && fieldOfKey(kind, key).value.starts(token)) : undefined;
    const key = lead?.key ?? bare;
    if (key !== undefined) {
      const ended = walkValue(fieldOfKey(kind, key).value, tokens, lead === undefined ? i : i + lead.words);
      said.add(key);
      if (ended.words.length > 0) listed.set(key, ended.words);
      i = ended.next;
      const isWhole = ended.open === undefined || (ended.open === 'unit' && accepts(fieldOfKey(kind, key).value, undefined));
      waits = { ...nothing, slots: isWhole, value: ended.open === 'value' ? key : undefined, unitOf: ended.open === 'unit' ? [key] : [] };
    } else if (token.kind === 'number') {
      const figure = walkFigure(tokens, i);
      i = figure.next;
      const { count, figures } = kind.bares;
      if (count !== undefined && tokens[i]?.text === 'at') {
        said.add(count);
        i++;
        waits = { ...nothing, behindAt: true };
        continue;
      }
      const free = figures.filter((one) => !said.has(one));
      const counts = count !== undefined && !said.has(count) ? [count] : [];
      const lacksUnit = figure.dimension === undefined && i === tokens.length;
      // Where no slot takes a bare number, nothing but its unit, or at, can follow.
      const isWhole = !lacksUnit || free.some((one) => accepts(fieldOfKey(kind, one).value, undefined));
      waits = { ...nothing, slots: isWhole, unitOf: lacksUnit ? [...free, ...counts] : [], at: counts.length > 0 };
      const taker = free.find((one) => accepts(fieldOfKey(kind, one).value, figure.dimension)) ?? free[0];
      if (taker !== undefined) said.add(taker);
    } else {
      i++;
      waits = { ...nothing, slots: token.kind !== 'mark' };
    }
  }
  return { waits, said, listed };
}

/** Goes over a fact line, whose lead is `words` long. */
export function walkFact(key: string, field: Field, tokens: readonly Token[], words: number): Walked {
  const ended = walkValue(field.value, tokens, words);
  const listed = new Map(ended.words.length > 0 ? [[key, ended.words]] : []);
  const done = ended.next < tokens.length || ended.open === undefined;
  return { waits: done ? nothing : { ...nothing, value: ended.open === 'value' ? key : undefined, unitOf: ended.open === 'unit' ? [key] : [] }, said: new Set([key]), listed };
}

interface Ended {
  readonly next: number;
  readonly open: 'value' | 'unit' | undefined;
  readonly words: readonly string[];
}

function walkValue(value: ValueType<unknown>, tokens: readonly Token[], from: number): Ended {
  if (tokens[from] === undefined) return { next: from, open: 'value', words: [] };
  if (value.measures !== undefined) {
    const figure = walkFigure(tokens, from);
    return { next: Math.max(figure.next, from + 1), open: figure.dimension === undefined && figure.next === tokens.length ? 'unit' : undefined, words: [] };
  }
  const words: string[] = [];
  let i = from;
  for (;;) {
    while (isList(value) && tokens[i]?.text === ',') i++;
    const token = tokens[i];
    if (token === undefined) return { next: i, open: 'value', words };
    words.push(token.text);
    i++;
    if (!isList(value) || tokens[i]?.text !== ',') return { next: i, open: undefined, words };
  }
}

/** A figure or a row of readings, with its unit. */
function walkFigure(tokens: readonly Token[], from: number): { readonly next: number; readonly dimension: Dimension | undefined } {
  let next = from;
  while (tokens[next]?.kind === 'number' || tokens[next]?.text === '/') next++;
  const unit = tokens[next];
  if (unit === undefined || next === from) return { next, dimension: undefined };
  if (unit.text === '%') return { next: next + 1, dimension: 'percent' };
  const dimension = unit.kind === 'word' ? unitWords.get(unit.text) : undefined;
  if (dimension !== undefined) return { next: next + 1, dimension };
  return { next: /^[A-Z]{3}$/.test(unit.text) ? next + 1 : next, dimension: undefined };
}

/** The slot that a lead word, or two, stand for, and how many words that are. */
export function leadAt(kind: Kind, tokens: readonly Token[], at: number): { readonly key: string; readonly words: number } | undefined {
  const first = tokens[at];
  if (first?.kind !== 'word') return undefined;
  const two = kind.leads.get(`${first.text} ${tokens[at + 1]?.text ?? ''}`);
  if (two !== undefined) return { key: two, words: 2 };
  const one = kind.leads.get(first.text);
  return one === undefined ? undefined : { key: one, words: 1 };
}

export function fieldOfKey(kind: Kind, key: string): Field {
  return kind.fields[key] as Field;
}

function isList(value: ValueType<unknown>): boolean {
  return value.item !== undefined;
}

/** Whether a figure without a unit, or with one of this dimension, fits. */
function accepts({ measures = [] }: ValueType<unknown>, dimension: Dimension | undefined): boolean {
  return dimension === undefined ? measures.includes('plain') || measures.includes('money') : measures.includes(dimension);
}

function isBareWord(kind: Kind, token: Token): boolean {
  return kind.bares.words.some((key) => fieldOfKey(kind, key).value.words !== undefined && fieldOfKey(kind, key).value.starts(token));
}
