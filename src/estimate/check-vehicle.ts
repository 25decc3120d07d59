import { problem, type Problem } from '../language/index.js';
import { hundred, is, kinds, type Record } from '../vocabulary/index.js';
import type { Estimate } from './types.js';
import { readVin } from './vin.js';
import * as rules from './work-rules.js';

/** Warns about a VIN that can't be read off right. Never an error: real ones fail the North American check. */
export function checkVin(records: readonly Record[], problems: Problem[]): void {
  for (const record of records) {
    const vin = is(record, kinds.vehicle) ? record.values.vin : undefined;
    if (vin === undefined) continue;
    const reading = readVin(vin.text);
    if (reading.shape !== 'good') problems.push(problem(rules.vinShape, vin.at, { length: vin.text.length, character: reading.shape === 'wrong character' }));
    else if (!reading.checkDigitHolds) problems.push(problem(rules.vinCheck, vin.at, { shows: vin.text[8] as string, should: reading.checkDigit as string, northAmerican: reading.northAmerican }));
  }
}

/** Lowest reading at least this share of the highest: TM 5-4210-230-14&P-1. Advisory; the maker's figure governs. */
const LEAST_SHARE = 75;

export function checkFindings(estimate: Estimate, problems: Problem[]): void {
  for (const { compression } of estimate.findings) {
    if (compression === undefined || compression.values.length < 2) continue;
    const [first, ...rest] = compression.values as [typeof hundred, ...(typeof hundred)[]];
    const low = rest.reduce((a, b) => (b.lt(a) ? b : a), first);
    const high = rest.reduce((a, b) => (b.gt(a) ? b : a), first);
    if (high.isZero()) continue;
    const share = low.times(hundred).div(high);
    if (share.lt(LEAST_SHARE)) problems.push(problem(rules.compressionUneven, compression.at, { low: low.toFixed(), high: high.toFixed(), share: share.toFixed(1) }));
  }
}
