import type { Span, Tree } from '../language/index.js';
import { Decimal } from '../vocabulary/index.js';
import type { Place } from './place.js';
import type { TextEdit } from './feature-types.js';

/** A written figure with another value in its place. */
export interface Trial {
  /** Where the figure is written: with its three points and its unit. */
  readonly at: Span;
  /** Digits, and a point before the decimals. */
  readonly value: string;
}

/** What a person may type for a figure: no sign, no comma, no more digits than the language reads. */
export const TRIAL_VALUE = /^\d{1,12}(?:\.\d{1,6})?$/;

/**
 * The text that stands for a figure once its likely value is another: its unit and, where they still enclose it, its
 * low and high stay as they are written.
 */
export function writtenWith({ block, start, end }: Span, value: string): string {
  const text = block.text.slice(start, end);
  const points = /^([\d.]+)(\s*\/\s*)([\d.]+)(\s*\/\s*)([\d.]+)/.exec(text);
  if (points === null) return text.replace(/^[\d.]+/, () => value);
  const [whole, low = '', first = '', , second = '', high = ''] = points;
  const inside = new Decimal(low).lte(value) && new Decimal(high).gte(value);
  return `${inside ? `${low}${first}${value}${second}${high}` : value}${text.slice(whole.length)}`;
}

/** The one edit that writes a trial into its file; undefined where the text has moved on or the value is no figure. */
export function trialEdit(trial: Trial, place: (span: Span) => Place | undefined): { readonly uri: string; readonly edit: TextEdit } | undefined {
  const at = TRIAL_VALUE.test(trial.value) ? place(trial.at) : undefined;
  return at === undefined ? undefined : { uri: at.uri, edit: { range: at.range, text: writtenWith(trial.at, trial.value) } };
}

/** The texts of the files that trials change. Trials whose place has moved on are left out. */
export function textsWith(trials: readonly Trial[], treeOf: (uri: string) => Tree | undefined, place: (span: Span) => Place | undefined): ReadonlyMap<string, string> {
  const byFile = new Map<string, TextEdit[]>();
  for (const trial of trials) {
    const made = trialEdit(trial, place);
    if (made !== undefined) byFile.set(made.uri, [...(byFile.get(made.uri) ?? []), made.edit]);
  }
  return new Map([...byFile].flatMap(([uri, edits]) => {
    const tree = treeOf(uri);
    return tree === undefined ? [] : [[uri, withEdits(tree.text, edits)] as const];
  }));
}

function withEdits(text: string, edits: readonly TextEdit[]): string {
  return [...edits].sort((a, b) => b.range.start - a.range.start).reduce((made, { range, text: to }) => made.slice(0, range.start) + to + made.slice(range.end), text);
}
