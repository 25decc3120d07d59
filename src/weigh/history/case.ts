import { hoursIn, type Access, type Closed, type Estimate, type Labour, type Mode, type Option } from '../../estimate/index.js';
import { one, zero, type Amount, type Decimal } from '../../vocabulary/index.js';
import type { Span } from '../../language/index.js';
import { moneyOf } from '../money.js';
import { lineWith, planWork } from '../plan.js';

/** Work done in one way, or a way in: what the shop's book of times has an entry for. */
export interface Job {
  /** Stands for it in the book: `labour swap with engine-out`, `labour "Dress the engine"`, `access engine-out`. */
  readonly key: string;
  readonly kind: 'labour' | 'access';
  readonly name: string | undefined;
  readonly title: string;
  /** The ways in that it is done with; none for a way in itself, and for work in the car. */
  readonly ways: readonly string[];
}

/** One time that it was done. Hours are of one piece of work, where a line has several. */
export interface Case {
  readonly job: Job;
  readonly hours: number;
  /** What the estimate said, for the way in that it was done with; undefined where that is nothing. */
  readonly estimated: number | undefined;
  /** The day of the closing. */
  readonly on: string | undefined;
}

/** The same, with where its hours are written. It keeps hold of the text. */
export interface WrittenCase extends Case {
  readonly at: Span;
}

/** What the job of a piece of work is called, done with these ways in. */
export function labourJob({ name, title }: Pick<Labour, 'name' | 'title'>, ways: readonly string[]): Job {
  const names = [...ways].sort();
  return { key: `labour ${name ?? `"${title}"`}${names.length === 0 ? '' : ` with ${names.join(', ')}`}`, kind: 'labour', name, title, ways: names };
}

export function accessJob({ name, title }: Pick<Access, 'name' | 'title'>): Job {
  return { key: `access ${name}`, kind: 'access', name, title, ways: [] };
}

/** The case of some clocked hours; none where nothing was clocked. `times` is how often one line does the job. */
export function caseOf(job: Job, clocked: Amount, times: Decimal, estimated: readonly (Amount | undefined)[], on: string | undefined): WrittenCase[] {
  if (clocked.likely.lte(0) || times.lte(0)) return [];
  const hours = estimated.reduce((total, amount) => (amount === undefined ? total : total.plus(hoursIn(amount))), zero);
  return [{ job, hours: hoursIn(clocked).div(times).toNumber(), estimated: hours.gt(0) ? hours.toNumber() : undefined, on, at: clocked.at }];
}


/**
 * What a closed estimate adds to the book of times. Work was done with the ways in that were clocked; where none was,
 * or the work can't be reached with those, with the ones of the cheapest plan. What a stage opens is open in any case.
 */
export function casesOf(estimate: Estimate): WrittenCase[] {
  const { closed } = estimate;
  if (closed?.option === undefined) return [];
  const modeOf = modesDone(closed.option, closed.clocked, estimate);
  return closed.clocked.flatMap(({ line, amount }): WrittenCase[] => {
    if (line === undefined) return [];
    if ('includes' in line) return caseOf(accessJob(line), amount, one, [line.remove, line.refit], closed.on);
    const mode = 'modes' in line ? modeOf(line) : undefined; // putting a core together is no work on the vehicle
    if (mode === undefined || !('modes' in line)) return [];
    return caseOf(labourJob(line, mode.with.map(({ name }) => name)), amount, line.count?.likely ?? one, [mode.hours], closed.on);
  });
}

function modesDone(option: Option, clocked: Closed['clocked'], estimate: Estimate): (job: Labour) => Mode | undefined {
  const { shop } = estimate;
  const money = moneyOf(shop.currency, shop.rounding);
  const opened = new Set(clocked.flatMap(({ line }) => (line !== undefined && 'includes' in line ? [line, ...line.includes] : [])));
  if (opened.size > 0) for (const way of option.staged?.ways ?? []) for (const one of [way, ...way.includes]) opened.add(one);
  let planned: ReadonlyMap<Labour, Mode> | undefined;
  const plan = () => new Map(planWork({ ...option, access: estimate.access }, shop, money).chosen.jobs.map(({ job, mode }) => [job, mode]));
  return (job) => {
    if (job.modes.length < 2) return job.modes[0];
    const open = opened.size === 0 || option.staged?.labour.includes(job) === true ? undefined : lineWith(job, opened, money)?.mode;
    return open ?? (planned ??= plan()).get(job) ?? job.modes[0];
  };
}
