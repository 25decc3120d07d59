import type { Statement, Token } from '../../language/index.js';
import { kinds, units, type Kind, type ValueType } from '../../vocabulary/index.js';
import { mentionsIn } from '../at.js';
import { isOfClosing } from './closing.js';
import { daysFrom, isDayOfJob } from './dates.js';
import { valueStop } from './defaults.js';
import { exampleOf, exampleText } from './example.js';
import { escaped, stop } from './snippet.js';
import { fieldOfKey, leadAt } from './walk.js';

/** What a snippet must know of the place where it will stand. */
export interface Standing {
  /** Left edge of the first line, and what one level more is made of. */
  readonly lead: string;
  readonly step: string;
  /** True where a name is of use: at the left edge. */
  readonly named: boolean;
  /** Names of a kind that the estimate has. */
  readonly names: (kinds: readonly string[], most: number) => readonly string[];
  readonly isTaken: (kind: string, name: string) => boolean;
  /** The first line of the option that was done which a closing says nothing of yet, as it is called there. */
  readonly closing: (kind: Kind) => string | undefined;
  /** The day on which it is written, where that is known. */
  readonly today: string | undefined;
}

/** Lines without which the line above them is worth nothing: they are written even where there is nothing to name yet. */
const NEEDED: readonly Kind[] = [kinds.finds];

/** A line that names another is written for so many names at most. */
const MOST_REPEATS = 4;

/** The shortest head line of a kind: its name, its title, or else what it can't do without. */
export function headSnippet(kind: Kind, standing: Standing): string {
  // There is one form of the language: nothing is left to fill in, and the next key must not take it away.
  if (kind === (kinds.format as Kind)) return kind.example;
  const example = exampleOf(kind);
  let text = kind.word;
  let number = 0;
  if (isNamed(kind, standing)) text += ` ${stop(++number, freshName(kind, example?.name?.name ?? kind.word, standing))}`;
  if (kind.title === 'required') text += ` "${stop(++number, example?.title?.text ?? '')}"`;
  if (number > 0) return text;
  const naming = namingKey(kind);
  const { words, figures } = kind.bares;
  const keys = [naming, figures[0] ?? (naming === undefined ? words[0] : undefined)].filter((key) => key !== undefined);
  return [text, ...keys.map((key, i) => bareValue(kind, key, i + 1, standing)), ...upToDay(kind, keys.length, standing)].join(' ');
}

/** The slot of a line, or of one that it needs below it, that names a line, where the estimate has none that it could name. */
export function slotThatWaits(kind: Kind, standing: Standing): ValueType<unknown> | undefined {
  for (const one of [kind, ...kind.children.filter((child) => NEEDED.includes(child))]) {
    const key = namingKey(one);
    const value = key === undefined ? undefined : fieldOfKey(one, key).value;
    if (value !== undefined && firstNamed(one, value, standing) === undefined) return value;
  }
  return undefined;
}

function namingKey(kind: Kind): string | undefined {
  return kind.bares.words.find((key) => fieldOfKey(kind, key).value.refersTo !== undefined);
}

/** Chances are named wherever they stand, since inspections look for them by name. */
function isNamed(kind: Kind, { named }: Standing): boolean {
  return kind.name === 'required' || (kind.name === 'optional' && (named || kind === (kinds.chance as Kind)));
}

function bareValue(kind: Kind, key: string, number: number, standing: Standing): string {
  const { value } = fieldOfKey(kind, key);
  const named = firstNamed(kind, value, standing);
  const title = /^"(.*)"$/.exec(named ?? '');
  return title === null ? valueStop(value, number, named, exampleText(kind, key)) : `"${stop(number, title[1] ?? '')}"`;
}

/** What a slot may name: below a closing a line of the option that was done, by its title in quotes where it has no name. */
function firstNamed(kind: Kind, { refersTo }: ValueType<unknown>, standing: Standing): string | undefined {
  return refersTo === undefined ? undefined : ((isOfClosing(kind) ? standing.closing(kind) : undefined) ?? standing.names(refersTo, 1)[0]);
}

/** Records of the job are held against their day: it is written at once, with the option they are for where there is one. */
function upToDay(kind: Kind, from: number, standing: Standing): string[] {
  const leads = [...kind.leads];
  const day = leads.findIndex(([, key]) => isDayOfJob(kind, fieldOfKey(kind, key)));
  let number = from;
  return leads.slice(0, day + 1).flatMap(([lead, key], i) => {
    const { value } = fieldOfKey(kind, key);
    const named = firstNamed(kind, value, standing);
    if (value.refersTo !== undefined && named === undefined) return [];
    return [`${lead} ${valueStop(value, ++number, named, (i === day ? standing.today : undefined) ?? exampleText(kind, key))}`];
  });
}

/**
 * A whole record to fill in, made of the kind's own example: every name, title and figure is a tab stop. A line that
 * names other lines, such as a time with a way in, is written for each line of the estimate that it can name.
 */
export function exampleSnippet(kind: Kind, standing: Standing): string {
  const record = exampleOf(kind);
  if (record === undefined) return headSnippet(kind, standing);
  const mentions = [...mentionsIn([record])].filter((one) => !one.gives);
  let number = 0;
  const days = standing.today === undefined ? new Map<string, string>() : daysFrom(standing.today, record.block.text.match(/\b\d{4}-\d\d-\d\d\b/g) ?? []);
  const namedOn = (statement: Statement) => mentions.find(({ at }) => statement.tokens.some((token) => token.start === at.start));
  if (namedOn(record.statement) !== undefined) return headSnippet(kind, standing);

  const linesOf = (statement: Statement, under: Kind | undefined, depth: number, siblings: readonly Statement[]): string[] => {
    const own = under === undefined ? kind : under.childByWord.get(statement.tokens[0]?.text ?? '');
    const edge = depth === 0 ? '' : standing.lead + standing.step.repeat(depth);
    const lines = namesOn(statement, siblings).map((name) => edge + lineOf(statement, own ?? under, name, depth === 0));
    return lines.length === 0 ? [] : [...lines, ...statement.children.flatMap((child) => linesOf(child, own, depth + 1, statement.children))];
  };
  return linesOf(record.statement, undefined, 0, []).join('\n');

  /** The names that a line is written with: of lines alike each takes one, and the last takes what is left. */
  function namesOn(statement: Statement, siblings: readonly Statement[]): readonly (string | undefined)[] {
    const mention = namedOn(statement);
    if (mention === undefined) return [undefined];
    const alike = siblings.filter((one) => one.tokens[0]?.text === statement.tokens[0]?.text && namedOn(one) !== undefined);
    const i = alike.indexOf(statement);
    const names = standing.names(mention.kinds, MOST_REPEATS);
    if (names.length === 0 && NEEDED.includes(mention.record.kind)) return [undefined];
    return names.slice(i, i === alike.length - 1 ? MOST_REPEATS : i + 1);
  }

  function lineOf({ block, tokens }: Statement, of: Kind | undefined, name: string | undefined, first: boolean): string {
    const named = first && record?.name !== undefined;
    let text = '';
    let at = tokens[0]?.start ?? 0;
    tokens.forEach((token, i) => {
      const gap = block.text.slice(at, token.start);
      at = token.end;
      if (named && i === 1) {
        if (isNamed(kind, standing)) text += `${gap}${stop(++number, freshName(kind, token.text, standing))}`;
        return;
      }
      const naming = mentions.some(({ at: span }) => span.start === token.start);
      if (naming) text += `${gap}${stop(++number, name ?? token.text)}`;
      else if (token.kind === 'date') text += `${gap}${stop(++number, days.get(token.text) ?? token.text)}`;
      else if (token.kind === 'text') text += `${gap}"${stop(++number, token.text)}"`;
      else if (isStructure(token, tokens, i, of)) text += gap + escaped(token.text);
      else text += `${gap}${stop(++number, token.text)}`;
    });
    return text;
  }
}

/** Words that make the line what it is, and are not typed over. */
function isStructure(token: Token, tokens: readonly Token[], i: number, of: Kind | undefined): boolean {
  if (token.kind === 'mark') return true;
  if (token.kind !== 'word') return false;
  if (i === 0 || token.text === 'at' || of === undefined) return true;
  if (leadAt(of, tokens, i) !== undefined || leadAt(of, tokens, i - 1)?.words === 2) return true;
  return tokens[i - 1]?.kind === 'number' && units.some(({ word }) => word === token.text);
}

function freshName(kind: Kind, wanted: string, { isTaken }: Standing): string {
  for (let i = 1; ; i++) {
    const name = i === 1 ? wanted : `${wanted}-${i}`;
    if (!isTaken(kind.word, name)) return name;
  }
}
