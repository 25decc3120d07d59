import { units } from '../vocabulary/index.js';
import type { ValueForm } from './value-form.js';

/** One rule of a TextMate grammar; only what is used here. */
export interface Pattern {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly include?: string;
  readonly captures?: Captures;
  readonly beginCaptures?: Captures;
  readonly patterns?: readonly Pattern[];
}
type Captures = Readonly<Record<string, { readonly name?: string; readonly patterns?: readonly Pattern[] }>>;

export const scope = (name: string) => `${name}.steelyard`;

/*
 * The shapes of the lexer as expressions. Every expression starts at a line start or behind `start`, so a failed
 * match is never tried again inside the same run, and no two neighbouring repetitions can take the same character:
 * the time for a line grows with its length and not faster.
 */
/** Behind the end of a run: white space, a quote, a mark, a comment or the line's end. Valid in JavaScript too. */
export const boundary = '(?=[ \\t"#,/%]|$)';
const start = '(?<![^ \\t",/%])';
const run = '[^ \\t\\r\\n"#,/%]+';
export const nameShape = '[A-Za-z][A-Za-z0-9-]*';
const several = `${run}(?:[ \\t]*,[ \\t]*${run})*`;

export const anyOf = (words: readonly string[]) => `(?:${words.map((word) => word.replace(/ /g, '[ \\t]+')).join('|')})`;

export const word = (words: readonly string[], name: string): Pattern => ({ name: scope(name), match: `${start}${anyOf(words)}${boundary}` });

/** A lead word with the items behind it; `before` says where it may stand. A figure behind it needs no help. */
export function led(before: 'line start' | 'in line', lead: string, forms: readonly ValueForm[]): Pattern {
  const from = before === 'line start' ? '^[ \\t]+' : start;
  const head = `${from}(${anyOf([lead])})${boundary}`;
  const keyword = { name: scope('keyword.other') };
  const items = forms.filter((form) => form.shape === 'items');
  if (items.length === 0) return { match: head, captures: { 1: keyword } };
  const shape = items.some((form) => form.list) ? several : run;
  return { match: `${head}(?:[ \\t]+(${shape}))?`, captures: { 1: keyword, 2: { patterns: itemPatterns(items) } } };
}

/** What the items behind a lead word are coloured as. */
export function itemPatterns(forms: readonly ValueForm[]): readonly Pattern[] {
  const constants = [...new Set(forms.flatMap((form) => [...form.choices, ...form.builtIn]))];
  const takesNames = forms.some((form) => form.refersTo.length > 0);
  const takesDates = forms.some((form) => form.takes.day && !form.takes.run);
  const takesWords = forms.some((form) => form.takes.word && form.refersTo.length === 0);
  return [
    ...(constants.length > 0 ? [word(constants, 'constant.language')] : []),
    ...(takesDates ? [{ include: '#date' }] : []),
    ...(takesNames ? [{ include: '#reference' }] : []),
    ...(takesWords ? [{ name: scope('string.unquoted'), match: run }] : []),
    { include: '#mark' },
    { include: '#figure' },
    { include: '#run' },
  ];
}

/** The shapes that mean the same on every line. */
export const shared: Readonly<Record<string, Pattern>> = {
  comment: { name: scope('comment.line.number-sign'), match: '(#).*$', captures: { 1: { name: scope('punctuation.definition.comment') } } },
  // One expression and no begin and end, so a title that is not closed can't run into the next line.
  title: {
    name: scope('string.quoted.double'),
    match: '(")((?:[^"\\\\\\r\\n]|\\\\.)*)(?:(")|\\\\?$)',
    captures: {
      1: { name: scope('punctuation.definition.string.begin') },
      2: { patterns: [{ name: scope('constant.character.escape'), match: '\\\\["\\\\]' }] },
      3: { name: scope('punctuation.definition.string.end') },
    },
  },
  curly: { name: scope('invalid.illegal.quote'), match: '[“”„][^“”"\\r\\n]*[“”"]?' },
  date: { name: scope('constant.numeric.date'), match: `${start}\\d{4}-\\d\\d(?:-\\d\\d)?${boundary}` },
  figure: {
    patterns: [
      { name: scope('invalid.illegal.figure'), match: `${start}\\d[^ \\t\\r\\n"#,/%]*(?:(?<=\\d),(?=\\d)${run})+` },
      {
        match: `${start}(\\d+(?:\\.\\d+)?)${boundary}(?:[ \\t]+(${anyOf(units.map((unit) => unit.word))}|[A-Z]{3})${boundary})?`,
        captures: { 1: { name: scope('constant.numeric') }, 2: { name: scope('keyword.other.unit') } },
      },
      { include: '#date' },
      { name: scope('invalid.illegal.figure'), match: `${start}[-+.$]?\\.?\\d${run.replace('+', '*')}` },
      { name: scope('keyword.other.unit'), match: '%' },
    ],
  },
  mark: {
    patterns: [
      { name: scope('punctuation.separator.list'), match: ',' },
      { name: scope('punctuation.separator.figures'), match: '/' },
    ],
  },
  reference: { name: scope('variable.other'), match: `${start}${nameShape}${boundary}` },
  run: { match: run },
};
