import { Places, problem, type Problem } from '../language/index.js';
import type { Amount, Record } from '../vocabulary/index.js';
import * as rules from './money-rules.js';

const namingOne = new Places<Record>(namesCurrency);

/** Reports amounts that name another currency than the shop's. `first` is the first record of the file itself. */
export function checkCurrencies(records: readonly Record[], first: Record | undefined, shopCurrency: string, problems: Problem[]): void {
  for (const i of namingOne.in(records, first)) lookThrough(records[i] as Record, shopCurrency, problems);
}

/** Whether an amount on the line or below it names its currency: few do, since the shop has said its own. */
function namesCurrency({ values, children }: Record): boolean {
  for (const key in values) if ((values[key] as Partial<Amount> | undefined)?.currency !== undefined) return true;
  return children.some(namesCurrency);
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
