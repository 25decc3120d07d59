/**
 * Reads estimate files a second time, into plain data, from `schemas/manual.md` as a reader would understand it. It knows
 * valid files only, has no messages, and shares no line of code with the product; a test reads its imports to hold that.
 */
import { KINDS, TOP, type Slots, type Value } from './kinds.js';

/** A figure as written: three points, equal where one was written. */
export interface Written {
  readonly low: string;
  readonly likely: string;
  readonly high: string;
  readonly unit?: string;
}

/** A line with all that it says and the lines below it. */
export interface Json {
  readonly kind: string;
  readonly name?: string;
  readonly title?: string;
  readonly [key: string]: unknown;
}

interface Token {
  readonly text: string;
  readonly quoted: boolean;
}

interface Line {
  readonly indent: number;
  readonly tokens: readonly Token[];
  readonly below: Line[];
}

type Said = { [key: string]: unknown };

/** The records of an estimate and of all files that it uses, each file once; those of the files it uses before its own. */
export function readFiles(main: string, textOf: (path: string) => string): Json[] {
  const seen = new Set<string>();
  const read = (path: string): Json[] => {
    if (seen.has(path)) return [];
    seen.add(path);
    const own = readText(textOf(path));
    const folder = path.split('/').slice(0, -1);
    return [...own.filter(({ kind }) => kind === 'use').flatMap(({ title }) => read(joined(folder, title as string))), ...own];
  };
  return read(main);
}

export function readText(text: string): Json[] {
  return nested(text).map((line) => recordOf(line, TOP));
}

function joined(folder: readonly string[], written: string): string {
  const steps = [...folder];
  for (const step of written.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.') steps.push(step);
  }
  return steps.join('/');
}

/** A line belongs to the nearest line above it that starts further left. */
function nested(text: string): Line[] {
  const root: Line = { indent: -1, tokens: [], below: [] };
  const open: Line[] = [root];
  for (const line of text.split(/\r?\n/)) {
    const tokens = tokensOf(line);
    if (tokens.length === 0) continue;
    const own: Line = { indent: line.length - line.trimStart().length, tokens, below: [] };
    while ((open.at(-1) as Line).indent >= own.indent) open.pop();
    (open.at(-1) as Line).below.push(own);
    open.push(own);
  }
  return root.below;
}

function tokensOf(line: string): Token[] {
  const tokens: Token[] = [];
  for (const [found, inside] of line.matchAll(/"((?:\\.|[^"\\])*)"|#.*|[,/%]|[^\s",#/%]+/g)) {
    if (found.startsWith('#')) break;
    tokens.push(inside === undefined ? { text: found, quoted: false } : { text: inside.replace(/\\(["\\])/g, '$1'), quoted: true });
  }
  return tokens;
}

function recordOf({ tokens, below }: Line, allowed: readonly string[]): Json {
  const word = (tokens[0] as Token).text;
  const kind = KINDS[word];
  if (kind === undefined || !allowed.includes(word)) throw new Error(`no line starts with ${word} here`);
  const rest = [...tokens.slice(1)];
  const said: Said = { kind: word };
  if (kind.name === 'always' || (kind.name !== undefined && rest[0]?.quoted === false && rest[1]?.quoted === true)) said['name'] = (rest.shift() as Token).text;
  if (kind.title && rest[0]?.quoted === true) said['title'] = (rest.shift() as Token).text;
  facts(rest, kind.slots, said);
  for (const line of below) {
    const head = (line.tokens[0] as Token).text;
    if (kind.below.includes(head)) ((said[head] ??= []) as Json[]).push(recordOf(line, kind.below));
    else facts([...line.tokens], kind.slots, said);
  }
  return said as Json;
}

/** Everything that a line says, in whatever order. */
function facts(tokens: Token[], slots: Slots, said: Said): void {
  while (tokens.length > 0) {
    const [first, second] = tokens as [Token, Token | undefined];
    const two = first.quoted || second === undefined ? undefined : slots.led[`${first.text} ${second.text}`];
    const one = first.quoted ? undefined : slots.led[first.text];
    const led = two ?? one;
    if (led !== undefined) {
      tokens.splice(0, two === undefined ? 1 : 2);
      put(said, led.key, valueOf(led.value, tokens));
    } else bare(tokens, slots, said);
  }
}

function put(said: Said, key: string, value: unknown): void {
  said[key] = Array.isArray(value) ? [...((said[key] ?? []) as unknown[]), ...(value as unknown[])] : value;
}

/** What stands without a word in front: a figure goes by what it measures, a word by the list it is on. */
function bare(tokens: Token[], slots: Slots, said: Said): void {
  const first = tokens[0] as Token;
  if (isNumber(first)) {
    const figure = amountOf(tokens);
    const counts = slots.counted !== undefined && tokens[0]?.quoted === false && tokens[0].text === 'at';
    if (counts) tokens.shift();
    const key = counts ? slots.counted : slots.figures[measureOf(figure)];
    if (key === undefined) throw new Error(`no place for ${JSON.stringify(figure)}`);
    said[key] = figure;
    return;
  }
  const key = slots.words.find(({ words }) => words === 'any' || words === 'any, several' || words.includes(first.text));
  if (key === undefined) throw new Error(`no place for ${first.text}`);
  put(said, key.key, valueOf(key.words === 'any, several' ? 'list' : 'text', tokens));
}

function valueOf(value: Value, tokens: Token[]): unknown {
  if (value === 'amount') return amountOf(tokens);
  if (value === 'text') return (tokens.shift() as Token).text;
  if (value === 'readings') {
    const values: string[] = [];
    while (tokens[0] !== undefined && isNumber(tokens[0])) values.push(plainNumber((tokens.shift() as Token).text));
    return { values, unit: (tokens.shift() as Token).text };
  }
  const one = () => (value === 'amounts' ? amountOf(tokens) : (tokens.shift() as Token).text);
  const list = [one()];
  while (tokens[0]?.quoted === false && tokens[0].text === ',') {
    tokens.shift();
    list.push(one());
  }
  return list;
}

const UNITS = ['h', 'min', 'd', 'wk', 'mo', 'L', 'qt', 'gal', 'kg', 'lb', 'm', 'ft', 'mi', 'km', 'psi', 'bar', 'kPa', '%'];

function isNumber({ text, quoted }: Token): boolean {
  return !quoted && /^\d+(\.\d+)?$/.test(text);
}

function amountOf(tokens: Token[]): Written {
  const points = [plainNumber((tokens.shift() as Token).text)];
  while (tokens[0]?.text === '/') {
    tokens.shift();
    points.push(plainNumber((tokens.shift() as Token).text));
  }
  const [low = '', likely = low, high = likely] = points;
  const next = tokens[0];
  if (next === undefined || next.quoted || !(UNITS.includes(next.text) || /^[A-Z]{3}$/.test(next.text))) return { low, likely, high };
  tokens.shift();
  return { low, likely, high, unit: next.text };
}

/** `007.50` is 7.5. */
function plainNumber(text: string): string {
  const [before = '', after = ''] = text.split('.');
  const decimals = after.replace(/0+$/, '');
  return `${before.replace(/^0+(?=\d)/, '')}${decimals === '' ? '' : `.${decimals}`}`;
}

function measureOf({ unit }: Written): 'time' | 'percent' | 'number' {
  return unit === 'h' || unit === 'min' ? 'time' : unit === '%' ? 'percent' : 'number';
}
