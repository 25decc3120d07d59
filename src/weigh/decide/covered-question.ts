import { isDate, type Decimal } from '../../vocabulary/index.js';

/** A distance as written; miles and kilometres are compared exactly. */
export interface Distance {
  readonly value: Decimal;
  readonly unit: 'mi' | 'km';
}

/**
 * Which vehicles a recall, campaign, bulletin or extended warranty says it is for; every condition that is given must
 * hold. Dates are YYYY-MM-DD or YYYY-MM, bounds included: a month as a beginning is its first day, as an end its last.
 */
export interface CoverRange {
  readonly builtFrom?: string;
  readonly builtTo?: string;
  readonly modelYears?: readonly number[];
  /** What the odometer may show at most. */
  readonly mostDistance?: Distance;
  /** The last day on which it is given. */
  readonly until?: string;
  /** Calendar months from the day of building; the day of that number in the last month is still within. Of a part of a month, as many of its days. */
  readonly withinMonthsOfBuild?: number;
  /** Days from the day of building; a day has no month's uncertain length. */
  readonly withinDaysOfBuild?: number;
}

/** What is known of the vehicle. */
export interface CoverVehicle {
  /** YYYY-MM-DD or YYYY-MM. */
  readonly built?: string;
  readonly modelYear?: number;
  readonly odometer?: Distance;
}

export interface CoverQuestion {
  readonly range: CoverRange;
  readonly vehicle: CoverVehicle;
  /** The day that is asked about, YYYY-MM-DD. */
  readonly on: string;
}

/** Why it can't be answered: something is not what it should be. */
export type CoverProblem =
  | { readonly kind: 'no such date'; readonly of: 'builtFrom' | 'builtTo' | 'until' | 'built' | 'on'; readonly written: string }
  | { readonly kind: 'ends before it begins'; readonly builtFrom: string; readonly builtTo: string }
  | { readonly kind: 'asked before it was built'; readonly on: string; readonly built: string }
  /** No year, or one that is not a whole number. */
  | { readonly kind: 'no such model year'; readonly of: 'modelYears' | 'modelYear'; readonly written: readonly number[] }
  /** Not finite, or below 0. */
  | { readonly kind: 'no such distance'; readonly of: 'mostDistance' | 'odometer'; readonly written: Distance }
  /** Not finite, below 0 or more than a hundred years; days also where they are not whole. */
  | { readonly kind: 'no such count of months' | 'no such count of days'; readonly written: number };

/** A hundred years. */
export const MOST_MONTHS = 1200;
export const MOST_DAYS = 36_525;

export function problemsOf({ range, vehicle, on }: CoverQuestion): CoverProblem[] {
  const problems: CoverProblem[] = [];
  const dates = [['builtFrom', range.builtFrom], ['builtTo', range.builtTo], ['until', range.until], ['built', vehicle.built]] as const;
  for (const [of, written] of dates) if (written !== undefined && !isMonthOrDay(written)) problems.push({ kind: 'no such date', of, written });
  if (!isMonthOrDay(on) || on.length === 7) problems.push({ kind: 'no such date', of: 'on', written: on });
  if (problems.length === 0) problems.push(...orderProblems(range, vehicle, on));

  const years = [['modelYears', range.modelYears], ['modelYear', vehicle.modelYear === undefined ? undefined : [vehicle.modelYear]]] as const;
  for (const [of, written] of years) {
    if (written !== undefined && (written.length === 0 || !written.every(Number.isInteger))) problems.push({ kind: 'no such model year', of, written });
  }
  const distances = [['mostDistance', range.mostDistance], ['odometer', vehicle.odometer]] as const;
  for (const [of, written] of distances) {
    if (written !== undefined && !(written.value.isFinite() && written.value.gte(0))) problems.push({ kind: 'no such distance', of, written });
  }
  const { withinMonthsOfBuild: months, withinDaysOfBuild: days } = range;
  if (months !== undefined && !(months >= 0 && months <= MOST_MONTHS)) problems.push({ kind: 'no such count of months', written: months });
  if (days !== undefined && !(Number.isInteger(days) && days >= 0 && days <= MOST_DAYS)) problems.push({ kind: 'no such count of days', written: days });
  return problems;
}

/** Dates in this writing are in order as texts; a month and a day are told apart where it matters. */
function orderProblems({ builtFrom, builtTo }: CoverRange, { built }: CoverVehicle, on: string): CoverProblem[] {
  const problems: CoverProblem[] = [];
  const asPrecise = Math.min(builtFrom?.length ?? 0, builtTo?.length ?? 0);
  if (builtFrom !== undefined && builtTo !== undefined && builtTo.slice(0, asPrecise) < builtFrom.slice(0, asPrecise)) {
    problems.push({ kind: 'ends before it begins', builtFrom, builtTo });
  }
  if (built !== undefined && on.slice(0, built.length) < built) problems.push({ kind: 'asked before it was built', on, built });
  return problems;
}

function isMonthOrDay(written: string): boolean {
  return /^\d{4}-\d\d(-\d\d)?$/.test(written) && isDate(written);
}
