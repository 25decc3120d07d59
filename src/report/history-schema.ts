import * as z from 'zod';
import { sampled } from './schema-values.js';

const day = (says: string) => z.string().describe(`${says} YYYY-MM-DD.`);

/**
 * The schema of what `steelyard history --json` prints: the shop's own book of times. The one in schemas/ is emitted
 * from this. Built when it is asked for: an editor never does.
 */
export function historyReport() {
  const farOff = z.strictObject({
    file: z.string(),
    line: z.int().describe('From 1.'),
    hours: sampled('What it took.'),
    estimated: sampled('What was estimated.'),
    closed: day('When that job was closed.').nullable(),
  });

  const job = z.strictObject({
    key: z.string().describe('Stands for the job: its kind, its name or its title in quotes, and the ways in that it was done with.'),
    kind: z.enum(['labour', 'access']),
    name: z.string().nullable(),
    title: z.string().describe('As it was called last.'),
    with: z.array(z.string()).describe('The ways in that it was done with.'),
    count: z.int().min(1),
    few: z.boolean().describe('True below five cases: a figure then says little.'),
    hours: z.strictObject({
      least: sampled('The quickest case.'),
      low: sampled('One case in ten is below it.'),
      middle: sampled('The median.'),
      high: sampled('One case in ten is above it.'),
      most: sampled('The slowest case.'),
    }).describe('Hours really clocked. Percentiles by definition 8 of Hyndman & Fan, American Statistician 50, 1996.'),
    ratio: z.strictObject({
      count: z.int().min(1).describe('Cases with an estimate.'),
      middle: sampled('The median.'),
      spread: sampled('The median absolute deviation from it, not scaled.'),
    }).nullable().describe('What it took, divided by what was estimated for the same way in.'),
    farOff: z.array(farOff).describe('Cases whose ratio has a modified z-score over 3.5 (Iglewicz & Hoaglin, 1993); none below five cases.'),
    trend: z.strictObject({
      hoursPerYear: sampled('Hours more with each year: the slope of Theil and Sen.'),
      byChance: sampled('How often chance alone would show as clear a trend, by the test of Mann and Kendall; from 0 to 1.'),
      from: day('The first case.'),
      to: day('The last case.'),
      count: z.int(),
    }).nullable().describe('Null below ten dated cases, or where no trend can be told from chance (one time in twenty).'),
  });

  return z.strictObject({
    steelyard: z.literal(1),
    report: z.literal('history'),
    files: z.int().describe('Files that were looked at.'),
    closed: z.int().describe('Those of them that are closed for an option.'),
    jobs: z.array(job).describe('Those clocked most often first.'),
    leftOut: z.array(z.strictObject({ file: z.string(), line: z.int().nullable(), why: z.string() })).describe('Files of which nothing was taken.'),
  }).describe('What jobs really took, over all closed estimates: the shop’s own book of times.');
}

export type HistoryReport = z.infer<ReturnType<typeof historyReport>>;
