import { problem, Slot, type Problem } from '../language/index.js';
import { heldByRecords, type Amount, type Record } from '../vocabulary/index.js';
import * as rules from './money-rules.js';

/** Records without an amount in any other currency than this, on the line or below it. */
const onlyIn = new Slot<string>(heldByRecords);

/** Reports amounts that name another currency than the shop's. */
export function checkCurrencies(records: readonly Record[], shopCurrency: string, problems: Problem[]): void {
  for (const record of records) {
    if (onlyIn.get(record) === shopCurrency) continue;
    const before = problems.length;
    lookThrough(record, shopCurrency, problems);
    if (problems.length === before) onlyIn.set(record, shopCurrency);
  }
}

function lookThrough(record: Record, shopCurrency: string, problems: Problem[]): void {
  for (const key in record.values) {
    const value = record.values[key] as Partial<Amount> | undefined;
    if (value?.currency !== undefined && value.currency !== shopCurrency && value.at !== undefined) {
      problems.push(problem(rules.otherCurrency, value.at, { code: value.currency, shop: shopCurrency }));
    }
  }
  for (const child of record.children) lookThrough(child, shopCurrency, problems);
}
