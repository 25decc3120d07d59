import type { JobHistory } from '../weigh/index.js';
import type { History, PlacedCase } from './history.js';
import type { HistoryReport } from './history-schema.js';
import { fixed } from './json-writer.js';

type JsonJob = HistoryReport['jobs'][number];

/** The book of times as plain data, in the form that `historyReport` describes. */
export function historyJson({ jobs, files, closed, leftOut }: History): HistoryReport {
  return { steelyard: 1, report: 'history', files, closed, jobs: jobs.map(jobJson), leftOut: leftOut.map(({ file, line, why }) => ({ file, line: line ?? null, why })) };
}

const HOURS = 3;
const SHARE = 4;

function jobJson({ job, count, few, hours, ratio, farOff, trend }: JobHistory<PlacedCase>): JsonJob {
  const text = (value: number) => fixed(value, HOURS);
  return {
    key: job.key, kind: job.kind, name: job.name ?? null, title: job.title, with: [...job.ways], count, few,
    hours: { least: text(hours.least), low: text(hours.low), middle: text(hours.middle), high: text(hours.high), most: text(hours.most) },
    ratio: ratio === undefined ? null : { count: ratio.count, middle: fixed(ratio.middle, SHARE), spread: fixed(ratio.spread, SHARE) },
    farOff: farOff.map((one) => ({ file: one.file, line: one.line, hours: text(one.hours), estimated: text(one.estimated ?? 0), closed: one.on ?? null })),
    trend: trend === undefined ? null : { hoursPerYear: fixed(trend.hoursPerYear, HOURS), byChance: fixed(trend.byChance, SHARE), from: trend.from, to: trend.to, count: trend.count },
  };
}
