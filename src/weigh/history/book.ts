import { dayOf } from '../calendar.js';
import type { Case, Job } from './case.js';
import { isFarOff, middleOf, quantile, type Middle } from './spread.js';
import { trendOf } from './trend.js';

/** With fewer cases than this nothing is told of far-off ones, and the entry says that they are few. */
export const FEW = 5;
/** A trend is looked for from so many cases on, the last ones; every pair of them is looked at. */
export const LEAST_FOR_TREND = 10;
export const MOST_FOR_TREND = 400;
/** What chance alone gives as often as this is no trend. */
const BY_CHANCE = 0.05;
const DAYS_PER_YEAR = 365.25;

/** How the hours of a job move over the years. */
export interface JobTrend {
  /** Hours more each year; below 0 where it gets quicker. */
  readonly hoursPerYear: number;
  /** How often chance alone would show as much. */
  readonly byChance: number;
  readonly from: string;
  readonly to: string;
  readonly count: number;
}

/** What a job really took, each time that it was done. Sampled: plain numbers, of which no quoted figure is made. */
export interface BookEntry {
  readonly job: Job;
  readonly count: number;
  readonly few: boolean;
  /** One case in ten is below `low`, one in ten above `high`. */
  readonly hours: { readonly least: number; readonly low: number; readonly middle: number; readonly high: number; readonly most: number };
  /** What it took, divided by what was estimated; undefined where nothing was. */
  readonly ratio: (Middle & { readonly count: number }) | undefined;
}

/** The shop's own book of times: what is known of a job, by its key. */
export type Book = ReadonlyMap<string, BookEntry>;

/** An entry with what takes every case to tell. */
export interface JobHistory<C extends Case = Case> extends BookEntry {
  /** Cases whose ratio lies far off the others. */
  readonly farOff: readonly C[];
  /** Undefined where there are too few cases, or no trend is to be told from chance. */
  readonly trend: JobTrend | undefined;
}

/** Puts cases together by job: those done most often first, then by key. */
export function historyOf<C extends Case>(cases: Iterable<C>): JobHistory<C>[] {
  const byJob = new Map<string, C[]>();
  for (const one of cases) {
    const list = byJob.get(one.job.key);
    if (list === undefined) byJob.set(one.job.key, [one]);
    else list.push(one);
  }
  return [...byJob.values()].map(jobHistory).sort((a, b) => b.count - a.count || (a.job.key < b.job.key ? -1 : 1));
}

export function bookOf(entries: Iterable<BookEntry>): Book {
  return new Map([...entries].map((entry) => [entry.job.key, entry]));
}

function jobHistory<C extends Case>(unordered: readonly C[]): JobHistory<C> {
  // What comes out must not hang on the order in which files were read.
  const cases = [...unordered].sort((a, b) => byDate(a.on ?? '', b.on ?? '') || a.hours - b.hours || (a.estimated ?? 0) - (b.estimated ?? 0));
  const sorted = Float64Array.from(cases, ({ hours }) => hours).sort();
  const compared = cases.filter(({ estimated }) => estimated !== undefined);
  const ratio = compared.length === 0 ? undefined : { ...middleOf(compared.map(ratioOf)), count: compared.length };
  const few = cases.length < FEW;
  return {
    job: (cases[cases.length - 1] as C).job, // as it is called today
    count: cases.length,
    few,
    hours: { least: sorted[0] as number, low: quantile(sorted, 0.1), middle: quantile(sorted, 0.5), high: quantile(sorted, 0.9), most: sorted[sorted.length - 1] as number },
    ratio,
    farOff: few || ratio === undefined ? [] : compared.filter((one) => isFarOff(ratioOf(one), ratio)),
    trend: jobTrend(cases),
  };
}

/** Dates as YYYY-MM-DD stand in the order of their letters, on every machine the same. */
function byDate(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** What it took, as a multiple of what was estimated. */
export function ratioOf({ hours, estimated = Infinity }: Pick<Case, 'hours' | 'estimated'>): number {
  return hours / estimated;
}

function jobTrend(cases: readonly Case[]): JobTrend | undefined {
  const dated = cases.flatMap(({ on, hours }) => (on === undefined ? [] : [{ on, hours }])).slice(-MOST_FOR_TREND);
  const [first] = dated;
  const last = dated[dated.length - 1];
  if (first === undefined || last === undefined || dated.length < LEAST_FOR_TREND) return undefined;
  const found = trendOf(Float64Array.from(dated, ({ on }) => dayOf(on)), Float64Array.from(dated, ({ hours }) => hours));
  if (found === undefined || found.slope === 0 || found.byChance >= BY_CHANCE) return undefined;
  return { hoursPerYear: found.slope * DAYS_PER_YEAR, byChance: found.byChance, from: first.on, to: last.on, count: dated.length };
}
