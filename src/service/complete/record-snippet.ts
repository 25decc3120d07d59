import { parse, type Span, type Statement, type Token } from '../../language/index.js';
import { allKinds, fileKinds, kinds, readBlock, units, type Kind, type Record } from '../../vocabulary/index.js';
import { mentionsIn } from '../at.js';
import { escaped, stop } from './snippet.js';
import { fieldOfKey, leadAt } from './walk.js';
import { valueStop } from './defaults.js';

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
}

/** A line that names another is written for so many names at most. */
const MOST_REPEATS = 4;

/** The shortest head line of a kind: its name, its title, or else its first value. */
export function headSnippet(kind: Kind, standing: Standing): string {
  const example = exampleOf(kind);
  let text = kind.word;
  let number = 0;
  if (isNamed(kind, standing)) text += ` ${stop(++number, freshName(kind, example?.name?.name ?? kind.word, standing))}`;
  if (kind.title === 'required') text += ` "${stop(++number, example?.title?.text ?? '')}"`;
  if (number > 0) return text;
  const { words, figures } = kind.bares;
  const naming = words.find((key) => fieldOfKey(kind, key).value.refersTo !== undefined);
  const keys = [naming, figures[0] ?? (naming === undefined ? words[0] : undefined)].filter((key) => key !== undefined);
  return [text, ...keys.map((key, i) => firstValue(kind, key, i + 1, example, standing))].join(' ');
}

/** Chances are named wherever they stand, since inspections look for them by name. */
function isNamed(kind: Kind, { named }: Standing): boolean {
  return kind.name === 'required' || (kind.name === 'optional' && (named || kind === (kinds.chance as Kind)));
}

function firstValue(kind: Kind, key: string, number: number, example: Record | undefined, standing: Standing): string {
  const { value } = fieldOfKey(kind, key);
  const written = [example?.values[key]].flat()[0] as { readonly at: Span } | undefined;
  const own = written === undefined || example === undefined ? undefined : example.block.text.slice(written.at.start, written.at.end);
  return valueStop(value, number, value.refersTo === undefined ? undefined : standing.names(value.refersTo, 1)[0], own);
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
    return standing.names(mention.kinds, MOST_REPEATS).slice(i, i === alike.length - 1 ? MOST_REPEATS : i + 1);
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

const examples = new Map<Kind, Record | undefined>();

/** The example of a kind, read. Kinds that stand only below others are read below a line of one of those. */
function exampleOf(kind: Kind): Record | undefined {
  if (!examples.has(kind)) examples.set(kind, readExample(kind));
  return examples.get(kind);
}

function readExample(kind: Kind): Record | undefined {
  const chain = chainAbove(kind);
  const head = chain.map((one, depth) => `${'  '.repeat(depth)}${one.example.split('\n')[0] ?? ''}\n`).join('');
  let record = readBlock(blockOf(head + kind.example.replace(/^/gm, '  '.repeat(chain.length)))).records[0];
  for (let depth = 0; depth < chain.length; depth++) record = record?.children[0];
  return record?.kind === kind ? record : undefined;
}

/** Kinds that a kind stands below, the outermost first; none for one that may stand at the left edge. */
function chainAbove(kind: Kind): readonly Kind[] {
  if (fileKinds.includes(kind)) return [];
  const parent = allKinds.find((one) => one.children.includes(kind));
  return parent === undefined ? [] : [...chainAbove(parent), parent];
}

function blockOf(text: string) {
  return parse('', text).blocks[0] as NonNullable<ReturnType<typeof parse>['blocks'][number]>;
}

function freshName(kind: Kind, wanted: string, { isTaken }: Standing): string {
  for (let i = 1; ; i++) {
    const name = i === 1 ? wanted : `${wanted}-${i}`;
    if (!isTaken(kind.word, name)) return name;
  }
}
