import { Decimal } from '../../vocabulary/index.js';
import { dayOf, isoOf, lastDayWithin, monthsAfter, type Day } from '../calendar.js';
import { problemsOf, type CoverProblem, type CoverQuestion, type CoverRange, type CoverVehicle, type Distance } from './covered-question.js';

export type { CoverRange, CoverVehicle, Distance };

export type Holds = 'yes' | 'no' | 'unknown';

/** What is not known: `day built` where only the month is. */
export type MissingFact = 'built' | 'day built' | 'model year' | 'odometer';

/** One condition of the range, what it was compared with, and what is missing where it can't be told. */
export type CoverReason = { readonly holds: Holds; readonly missing: MissingFact | undefined } & (
  | { readonly condition: 'built from' | 'built to'; readonly limit: string; readonly found: string | undefined }
  | { readonly condition: 'model year'; readonly limit: readonly number[]; readonly found: number | undefined }
  | { readonly condition: 'distance'; readonly limit: Distance; readonly found: Distance | undefined }
  | { readonly condition: 'until'; readonly limit: string; readonly found: string }
  /** `ends` are the first and last day on which the months or days can end; the same day where the day built is known. */
  | { readonly condition: 'months since build' | 'days since build'; readonly limit: number; readonly found: string; readonly built: string | undefined; readonly ends: { readonly first: string; readonly last: string } | undefined }
);

export type CoverAnswer =
  /** A reason for each condition of the range, in its order: none at all where the range sets none. */
  | { readonly kind: 'answered'; readonly answer: 'covered' | 'not covered' | 'unknown'; readonly reasons: readonly CoverReason[] }
  | { readonly kind: 'refused'; readonly problems: readonly CoverProblem[] };

/** NIST SP 811, appendix B: the mile, exactly. */
const KM_PER_MILE = new Decimal('1.609344');

/**
 * Whether the vehicle is among those that a recall, campaign, bulletin or extended warranty says it is for, on a day.
 * Not covered where one condition fails, unknown where none fails but one can't be told, or where the range sets no
 * condition at all; each condition is told by itself. It compares what was written and concludes nothing about what anyone owes: terms, exclusions and
 * the maker's own look-up by number go before it.
 */
export function coverOf(question: CoverQuestion): CoverAnswer {
  const problems = problemsOf(question);
  if (problems.length > 0) return { kind: 'refused', problems };
  const reasons = reasonsOf(question);
  const fails = reasons.some((reason) => reason.holds === 'no');
  const told = reasons.length > 0 && reasons.every((reason) => reason.holds === 'yes');
  return { kind: 'answered', answer: fails ? 'not covered' : told ? 'covered' : 'unknown', reasons };
}

function reasonsOf({ range, vehicle, on }: CoverQuestion): CoverReason[] {
  const { builtFrom, builtTo, modelYears, mostDistance, until, withinMonthsOfBuild, withinDaysOfBuild } = range;
  return [
    ...(builtFrom === undefined ? [] : [built('built from', builtFrom, vehicle)]),
    ...(builtTo === undefined ? [] : [built('built to', builtTo, vehicle)]),
    ...(modelYears === undefined ? [] : [modelYear(modelYears, vehicle)]),
    ...(mostDistance === undefined ? [] : [distance(mostDistance, vehicle)]),
    ...(until === undefined ? [] : [{ condition: 'until', limit: until, found: on, holds: yesOrNo(dayOf(on) <= daysOf(until).last), missing: undefined } as const]),
    ...(withinMonthsOfBuild === undefined ? [] : [sinceBuild('months since build', withinMonthsOfBuild, lastDayWithin, vehicle, on)]),
    ...(withinDaysOfBuild === undefined ? [] : [sinceBuild('days since build', withinDaysOfBuild, daysAfter, vehicle, on)]),
  ];
}

function built(condition: 'built from' | 'built to', limit: string, { built: found }: CoverVehicle): CoverReason {
  if (found === undefined) return { condition, limit, found, holds: 'unknown', missing: 'built' };
  const days = daysOf(found);
  // How the first and the last day that it can have been built on stand to the limit.
  const within = (day: Day) => (condition === 'built from' ? day >= daysOf(limit).first : day <= daysOf(limit).last);
  return { condition, limit, found, ...bothEnds(within(days.first), within(days.last)) };
}

function modelYear(limit: readonly number[], { modelYear: found }: CoverVehicle): CoverReason {
  if (found === undefined) return { condition: 'model year', limit, found, holds: 'unknown', missing: 'model year' };
  return { condition: 'model year', limit, found, holds: yesOrNo(limit.includes(found)), missing: undefined };
}

function distance(limit: Distance, { odometer: found }: CoverVehicle): CoverReason {
  if (found === undefined) return { condition: 'distance', limit, found, holds: 'unknown', missing: 'odometer' };
  return { condition: 'distance', limit, found, holds: yesOrNo(inKm(found).lte(inKm(limit))), missing: undefined };
}

function sinceBuild(condition: 'months since build' | 'days since build', limit: number, after: (day: Day, count: number) => Day, { built: from }: CoverVehicle, on: string): CoverReason {
  if (from === undefined) return { condition, limit, found: on, built: from, ends: undefined, holds: 'unknown', missing: 'built' };
  const days = daysOf(from);
  const [first, last] = [after(days.first, limit), after(days.last, limit)];
  return { condition, limit, found: on, built: from, ends: { first: isoOf(first), last: isoOf(last) }, ...bothEnds(dayOf(on) <= first, dayOf(on) <= last) };
}

function daysAfter(day: Day, count: number): Day {
  return day + count;
}

/** A condition on a day of which only the month may be known: told where both ends of the month agree. */
function bothEnds(first: boolean, last: boolean): { readonly holds: Holds; readonly missing: MissingFact | undefined } {
  return first === last ? { holds: yesOrNo(first), missing: undefined } : { holds: 'unknown', missing: 'day built' };
}

function yesOrNo(holds: boolean): 'yes' | 'no' {
  return holds ? 'yes' : 'no';
}

/** The first and the last day of a month, or a day twice. */
function daysOf(written: string): { readonly first: Day; readonly last: Day } {
  if (written.length > 7) return { first: dayOf(written), last: dayOf(written) };
  const first = dayOf(`${written}-01`);
  return { first, last: monthsAfter(first, 1) - 1 };
}

function inKm({ value, unit }: Distance): Decimal {
  return unit === 'mi' ? value.times(KM_PER_MILE) : value;
}
