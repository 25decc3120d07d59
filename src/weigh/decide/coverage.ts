import type { Coverage, Estimate } from '../../estimate/index.js';
import type { Amount } from '../../vocabulary/index.js';
import { modelYearOf } from './covered-model-year.js';
import { coverOf, type CoverRange, type CoverReason, type Distance } from './covered.js';
import { MOST_DAYS, MOST_MONTHS } from './covered-question.js';

/** Whether a coverage holds for the vehicle, as far as what is written tells. Never a legal conclusion. */
export interface Covered {
  readonly coverage: Coverage;
  readonly answer: 'covered' | 'not covered' | 'unknown';
  readonly reasons: readonly CoverReason[];
  /** The day it was asked about, YYYY-MM-DD; undefined where the estimate has no date. */
  readonly on: string | undefined;
  /** Names of the options that it would pay for, or that do work it would pay for. */
  readonly options: readonly string[];
}

export function coveragesOf(estimate: Estimate): readonly Covered[] {
  return estimate.coverages.map((coverage) => coveredBy(coverage, estimate));
}

function coveredBy(coverage: Coverage, { vehicle, header, options }: Estimate): Covered {
  const on = header?.start ?? header?.written;
  const { builtFrom, builtTo, years, upTo, within, until } = coverage;
  const mostDistance = distanceOf(upTo);
  const modelYear = vehicle?.modelYear ?? (vehicle?.vin === undefined ? undefined : modelYearOf(vehicle.vin));
  const odometer = distanceOf(vehicle?.odometer);
  const answer = coverOf({
    range: {
      ...(builtFrom === undefined ? {} : { builtFrom }),
      ...(builtTo === undefined ? {} : { builtTo }),
      ...(years.length === 0 ? {} : { modelYears: years }),
      ...(mostDistance === undefined ? {} : { mostDistance }),
      ...(until === undefined || on === undefined ? {} : { until }),
      ...(within === undefined || on === undefined ? {} : withinOf(within)),
    },
    vehicle: {
      ...(vehicle?.built === undefined ? {} : { built: vehicle.built }),
      ...(modelYear === undefined ? {} : { modelYear }),
      ...(odometer === undefined ? {} : { odometer }),
    },
    on: on ?? NO_DAY,
  });
  const undated = on === undefined && (until !== undefined || within !== undefined);
  const by = options.filter((option) => coverage.covers.includes(option.name) || option.labour.some((job) => job.name !== undefined && coverage.covers.includes(job.name)));
  const told = answer.kind === 'answered' ? answer : { answer: 'unknown' as const, reasons: [] };
  return { coverage, answer: undated && told.answer === 'covered' ? 'unknown' : told.answer, reasons: told.reasons, on, options: by.map((option) => option.name) };
}

/** Stands in where the estimate has no day and no condition asks for one. */
const NO_DAY = '9999-12-31';

/** Calendar months are counted as such, a part of one too, days and weeks as days: a month has no certain number of them. */
function withinOf({ likely, unit }: Amount): CoverRange {
  const count = likely.toNumber();
  if (unit?.word === 'mo') return { withinMonthsOfBuild: Math.min(MOST_MONTHS, count) };
  return { withinDaysOfBuild: Math.min(MOST_DAYS, Math.floor(unit?.word === 'wk' ? count * 7 : count)) };
}

function distanceOf(amount: Amount | undefined): Distance | undefined {
  const unit = amount?.unit?.word;
  return amount === undefined || (unit !== 'mi' && unit !== 'km') ? undefined : { value: amount.likely, unit };
}
