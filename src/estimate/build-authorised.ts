import { problem, type Problem } from '../language/index.js';
import type { kinds} from '../vocabulary/index.js';
import { hundred, type Amount, type DateValue, type Name, type RecordOf } from '../vocabulary/index.js';
import * as rules from './authorised-rules.js';
import { isFarAfter } from './days.js';
import type { Authorised, Quoted, Started } from './job-types.js';
import { remember } from './remember.js';
import type { Overrun } from './shop-types.js';
import { sourceOf } from './source.js';

/** What records of the job are read against: names that they may be for, and the day on which the estimate was written. */
export interface JobNames {
  readonly options: readonly string[];
  readonly stages: readonly string[];
  readonly written: string | undefined;
}

export function buildQuoted(record: RecordOf<typeof kinds.quoted>, names: JobNames, problems: Problem[]): Quoted {
  return remember(record, madeFrom(record, names), problems, (own) => forOption('quoted', record, names, own));
}

/** Builds the authorisations of an estimate, in the order of the file. */
export function buildAuthorised(records: readonly RecordOf<typeof kinds.authorised>[], names: JobNames, problems: Problem[]): readonly Authorised[] {
  const built = records.map((record) => remember(record, madeFrom(record, names), problems, (own): Authorised => {
    const { by, how, version } = record.values;
    return { ...forOption('authorised', record, names, own), by: by?.text, how: how?.word, version: version?.text };
  }));
  built.forEach((one, i) => {
    const twin = built.slice(0, i).find((other) => one.for !== undefined && one.on !== undefined && other.for === one.for && other.on === one.on);
    if (twin !== undefined) problems.push(problem(rules.authorisedSameDay, one.at, { name: one.for as string, on: one.on as string }, { at: twin.at, says: 'The first one' }));
  });
  return built;
}

export function buildStarted(record: RecordOf<typeof kinds.started>, { written }: JobNames, problems: Problem[]): Started {
  return remember(record, [written], problems, (own) => {
    const { on } = record.values;
    if (on === undefined && !record.broken) own.push(problem(rules.agreedUnclear, record.at, { kind: 'started', lacks: 'on' }));
    checkDay('started', on, written, own);
    return { ...sourceOf(record), on: on?.iso };
  });
}

/** The shop's rule; undefined where it can't be worked out. */
export function buildOverrun(record: RecordOf<typeof kinds.overrun>, problems: Problem[]): Overrun | undefined {
  const { percent, fixed, atLeast, atMost } = record.values;
  const unclear = (is: Parameters<typeof rules.overrunUnclear.message>[0]['is'], at = record.at) => {
    if (!record.broken) problems.push(problem(rules.overrunUnclear, at, { is }));
    return undefined;
  };
  for (const amount of [percent, fixed, atLeast, atMost]) checkOneFigure(amount, problems);
  if (percent === undefined) {
    if (fixed === undefined) return unclear('empty');
    return atLeast === undefined && atMost === undefined ? { ...sourceOf(record), by: { fixed } } : unclear('fixed with limits');
  }
  if (fixed !== undefined) return unclear('both');
  if (percent.likely.gt(hundred)) return unclear('over hundred', percent.at);
  if (atLeast !== undefined && atMost?.likely.lt(atLeast.likely) === true) return unclear('backwards');
  return { ...sourceOf(record), by: { percent, atLeast, atMost } };
}

type OptionRecord = RecordOf<typeof kinds.quoted> | RecordOf<typeof kinds.authorised>;

function madeFrom({ values }: OptionRecord, { options, stages, written }: JobNames): readonly unknown[] {
  return [nameFor(values.for, { options, stages }), options.length, written];
}

function forOption(kind: 'quoted' | 'authorised', record: OptionRecord, names: JobNames, problems: Problem[]): Quoted {
  const { amount, on, for: about } = record.values;
  const lacks = amount === undefined ? 'amount' : about === undefined && names.options.length > 1 ? 'for' : on === undefined ? 'on' : undefined;
  if (lacks !== undefined && !record.broken) problems.push(problem(rules.agreedUnclear, record.at, { kind, lacks }));
  checkOneFigure(amount, problems);
  checkDay(kind, on, names.written, problems);
  return { ...sourceOf(record), amount, for: nameFor(about, names), on: on?.iso };
}

function nameFor(written: Name | undefined, { options, stages }: Pick<JobNames, 'options' | 'stages'>): string | undefined {
  if (written === undefined) return options.length === 1 ? options[0] : undefined;
  return options.includes(written.name) || stages.includes(written.name) ? written.name : undefined;
}

function checkOneFigure(amount: Amount | undefined, problems: Problem[]): void {
  if (amount === undefined || amount.low.eq(amount.high)) return;
  const { likely, percent, currency } = amount;
  problems.push(problem(rules.oneFigure, amount.at, { likely: `${likely.toFixed()}${percent ? '%' : ''}${currency === undefined ? '' : ` ${currency}`}` }));
}

function checkDay(kind: 'quoted' | 'authorised' | 'started', on: DateValue | undefined, written: string | undefined, problems: Problem[]): void {
  if (on === undefined || written === undefined) return;
  if (on.iso < written) problems.push(problem(rules.dayBeforeWritten, on.at, { kind, on: on.iso, written }));
  else if (isFarAfter(on.iso, written)) problems.push(problem(rules.dayFarOff, on.at, { kind, on: on.iso, written }));
}
