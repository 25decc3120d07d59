import type { Span } from '../language/index.js';
import type { TriedFigure } from '../page/messages.js';
import { writtenFigure } from '../report/page/index.js';
import { TRIAL_VALUE, writtenWith, type LanguageService, type Trial } from '../service/index.js';

/** A figure that is tried, with what is said of it. */
export interface KeptTrial extends Trial {
  readonly id: string;
  readonly names: string;
  /** Its file, and its line there: the one of several equal ones that comes as the `nth`. */
  readonly uri: string;
  readonly line: string;
  readonly nth: number;
}

/** More figures at once are another estimate. */
export const MOST_TRIALS = 20;

type Texts = Pick<LanguageService, 'place' | 'tree'>;

/** A trial of a figure; undefined where the figure is no longer where it was. */
export function trialOf(id: string, names: string, at: Span, value: string, service: Texts): KeptTrial | undefined {
  const place = service.place(at);
  const text = place === undefined ? undefined : service.tree(place.uri)?.text;
  if (place === undefined || text === undefined) return undefined;
  const from = lineStart(text, place.range.start);
  const line = lineAt(text, from);
  return { id, names, at, value, uri: place.uri, line, nth: startsOf(text, line).indexOf(from) };
}

/** Without the trial of a figure. */
export function withoutTrial(trials: readonly KeptTrial[], at: Span): readonly KeptTrial[] {
  return trials.filter((one) => !isSame(one.at, at));
}

/** With one trial more, or another value for one that there is; a full list takes no more. */
export function withTrial(trials: readonly KeptTrial[], trial: KeptTrial): readonly KeptTrial[] {
  if (trials.some(({ at }) => isSame(at, trial.at))) return trials.map((one) => (isSame(one.at, trial.at) ? trial : one));
  return trials.length >= MOST_TRIALS ? trials : [...trials, trial];
}

/**
 * The trials whose lines still stand in the text as it is now, found again where something else was edited; and those
 * whose lines do not.
 */
export function stillTried(trials: readonly KeptTrial[], service: Texts): { readonly trials: readonly KeptTrial[]; readonly dropped: readonly KeptTrial[] } {
  const kept: KeptTrial[] = [];
  const dropped: KeptTrial[] = [];
  for (const trial of trials) {
    const found = service.place(trial.at) === undefined ? foundAgain(trial, service) : trial;
    if (found === undefined) dropped.push(trial);
    else kept.push(found);
  }
  return dropped.length === 0 && kept.every((one, i) => one === trials[i]) ? { trials, dropped } : { trials: kept, dropped };
}

/** Where a span of a text with trials is in the file: the text of a block with trials is known, and so what moved in it. */
export function homeOf(trials: readonly KeptTrial[]): (span: Span) => Span {
  const blocks = new Map<Span['block'], KeptTrial[]>();
  for (const trial of trials) blocks.set(trial.at.block, [...(blocks.get(trial.at.block) ?? []), trial].sort((a, b) => a.at.start - b.at.start));
  const tried = [...blocks].map(([block, inside]) => ({ block, inside, text: inside.reduceRight((text, { at, value }) => text.slice(0, at.start) + writtenWith(at, value) + text.slice(at.end), block.text) }));
  return (span) => {
    const one = tried.find(({ text }) => text === span.block.text);
    if (one === undefined) return span;
    const start = back(span.start, one.inside);
    return { block: one.block, start, end: Math.max(start, back(span.end, one.inside)) };
  };
}

function back(offset: number, trials: readonly KeptTrial[]): number {
  let moved = 0;
  for (const { at, value } of trials) {
    const grew = writtenWith(at, value).length - (at.end - at.start);
    if (offset <= at.start + moved) break;
    if (offset <= at.end + moved + grew) return Math.min(at.end, offset === at.end + moved + grew ? at.end : offset - moved);
    moved += grew;
  }
  return offset - moved;
}

function foundAgain(trial: KeptTrial, service: Texts): KeptTrial | undefined {
  const at = spanOf(saved(trial), service);
  return at === undefined ? undefined : { ...trial, at };
}

/** What is kept of a trial. */
export function saved({ id, names, value, uri, line, nth, at }: KeptTrial): TriedFigure {
  return { id, names, value, uri, line, nth, column: at.start - lineStart(at.block.text, at.start), length: at.end - at.start };
}

/** A trial of an earlier session, where its line still reads as it did and a figure stands in its place. */
export function restored(trial: TriedFigure, service: Texts): KeptTrial | undefined {
  const { id, names, value, uri, line, nth, column, length } = trial;
  const at = column + length <= line.length ? spanOf(trial, service) : undefined;
  return at === undefined || writtenFigure(at) === undefined || !TRIAL_VALUE.test(value) ? undefined : { id, names, value, uri, line, nth, at };
}

function spanOf({ uri, line, nth, column, length }: TriedFigure, service: Texts): Span | undefined {
  const tree = service.tree(uri);
  const from = tree === undefined ? undefined : startsOf(tree.text, line)[nth];
  if (tree === undefined || from === undefined) return undefined;
  const start = from + column;
  let offset = 0;
  for (const block of tree.blocks) {
    if (start < offset + block.text.length) return { block, start: start - offset, end: start - offset + length };
    offset += block.text.length;
  }
  return undefined;
}

/** Where each line that reads just so starts. */
function startsOf(text: string, line: string): readonly number[] {
  const starts: number[] = [];
  for (let from = text.indexOf(line); from >= 0; from = text.indexOf(line, from + 1)) {
    if (lineStart(text, from) === from && lineAt(text, from) === line) starts.push(from);
  }
  return starts;
}

function lineStart(text: string, offset: number): number {
  return Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
}

function lineAt(text: string, start: number): string {
  return /^[^\r\n]*/.exec(text.slice(start))?.[0] ?? '';
}

function isSame(a: Span, b: Span): boolean {
  return a.block === b.block && a.start === b.start && a.end === b.end;
}
