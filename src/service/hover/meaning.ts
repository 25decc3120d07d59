import type { Token } from '../../language/index.js';
import type { Field, Kind } from '../../vocabulary/index.js';
import { kindAbove, kindOf, type At } from '../at.js';

/** A word and what it means where it stands. */
export interface Meaning {
  readonly from: Token;
  readonly to: Token;
  readonly paragraphs: readonly string[];
}

/** What the kind or fact word under the pointer means, with an example; on a choice, what choosing it says. */
export function meaningAt(at: At): Meaning | undefined {
  const { statement, token } = at;
  if (statement === undefined || token?.kind !== 'word') return undefined;
  const kind = kindOf(statement, at.above);
  const i = statement.tokens.findIndex(({ start }) => start === token.start);
  if (i === 0 && kind !== undefined) return { from: token, to: token, paragraphs: [`${kind.word}: ${kind.says}`, `For example:\n${kind.example}`] };
  const of = kind ?? kindAbove(at.above);
  return of === undefined ? undefined : (leadMeaning(of, statement.tokens, i) ?? choiceMeaning(of, statement.tokens, i));
}

function leadMeaning(of: Kind, tokens: readonly Token[], i: number): Meaning | undefined {
  for (const from of [i, i - 1]) {
    const first = tokens[from];
    const second = tokens[from + 1];
    const pair = first === undefined || second === undefined ? undefined : of.leads.get(`${first.text} ${second.text}`);
    if (pair !== undefined && first !== undefined && second !== undefined) return { from: first, to: second, paragraphs: fieldSays(`${first.text} ${second.text}`, of.fields[pair] as Field) };
  }
  const word = tokens[i] as Token;
  const key = of.leads.get(word.text);
  return key === undefined || isOwnName(of, tokens, i) ? undefined : { from: word, to: word, paragraphs: fieldSays(word.text, of.fields[key] as Field) };
}

/** A line may well have the name `worth`: behind the first word of a kind with names, before its title, it is one. */
function isOwnName(of: Kind, tokens: readonly Token[], i: number): boolean {
  return i === 1 && of.name !== 'none' && tokens[0]?.text === of.word && (of.name === 'required' || tokens[2]?.kind === 'text');
}

function fieldSays(lead: string, { says, value }: Field): string[] {
  // An example of a name would be some name that this estimate does not have.
  if (value.refersTo !== undefined) return [`${lead}: ${says}`, value.says];
  const example = value.words === undefined ? value.examples[0] : Object.keys(value.words)[0];
  return [`${lead}: ${says}`, `For example: ${lead} ${example ?? ''}`.trimEnd()];
}

function choiceMeaning(of: Kind, tokens: readonly Token[], i: number): Meaning | undefined {
  const word = tokens[i] as Token;
  const field = fieldBefore(of, tokens, i) ?? of.bares.words.map((key) => of.fields[key] as Field).find(({ value }) => value.words !== undefined && Object.hasOwn(value.words, word.text));
  const { words, builtIn } = field?.value ?? {};
  const says = words !== undefined && Object.hasOwn(words, word.text) ? words[word.text] : builtIn !== undefined && Object.hasOwn(builtIn, word.text) ? builtIn[word.text] : undefined;
  return says === undefined ? undefined : { from: word, to: word, paragraphs: [`${word.text}: ${says}`] };
}

/** The slot that the nearest lead word before a token opens. */
export function fieldBefore(of: Kind, tokens: readonly Token[], i: number): Field | undefined {
  for (let at = i - 1; at >= 0; at--) {
    const key = of.leads.get(`${tokens[at - 1]?.text ?? ''} ${tokens[at]?.text ?? ''}`) ?? (isOwnName(of, tokens, at) ? undefined : of.leads.get(tokens[at]?.text ?? ''));
    if (key !== undefined) return of.fields[key] as Field;
  }
  return undefined;
}
