import { Places, problem, type Problem } from '../language/index.js';
import { bothReadings, mayDivideThousands, type Amount, type Currency, type Field, type Kind, type Record } from '../vocabulary/index.js';
import * as rules from './money-rules.js';

const inDoubt = new Places<Record>(isInDoubt);

/** Reports amounts that name another currency than the shop's, and such that may mean a thousand times what they say. `first` is the first record of the file itself. */
export function checkAmounts(records: readonly Record[], first: Record | undefined, currency: Currency, problems: Problem[]): void {
  for (const record of inDoubt.itemsIn(records, first)) lookThrough(record, currency, problems);
}

/** Whether an amount on the line or below it names its currency, or has three decimals: few do. */
function isInDoubt({ kind, values, children }: Record): boolean {
  for (const key in values) {
    const value = values[key] as Partial<Amount> | undefined;
    if (value?.likely !== undefined && (value.currency !== undefined || (divides(kind, key) && mayDivideThousands(textOf(value as Amount))))) return true;
  }
  return children.some(isInDoubt);
}

function lookThrough(record: Record, currency: Currency, problems: Problem[]): void {
  for (const key in record.values) {
    const value = record.values[key] as Partial<Amount> | undefined;
    if (value?.likely !== undefined) lookAt(value as Amount, divides(record.kind, key), currency, problems);
  }
  for (const child of record.children) lookThrough(child, currency, problems);
}

function lookAt(amount: Amount, mayDivide: boolean, { code, digits }: Currency, problems: Problem[]): void {
  if (amount.currency !== undefined && amount.currency !== code) {
    problems.push(problem(rules.otherCurrency, amount.at, { code: amount.currency, shop: code }));
    return;
  }
  // Where the smallest coin is a thousandth, three decimals are how money is written.
  if (!mayDivide || (digits > 2 && amount.unit === undefined)) return;
  const unit = amount.unit?.word ?? amount.currency ?? '';
  const written = textOf(amount).slice(0, amount.at.end - amount.at.start - unit.length).trimEnd();
  if (!mayDivideThousands(written)) return;
  const { start } = amount.at;
  problems.push(problem(rules.thousandsPoint, { ...amount.at, end: start + written.length }, { written, ...bothReadings(written) }));
}

const dividing = new Map<Kind, ReadonlySet<string>>();

/** Whether a slot takes money or a distance, which people divide by thousands. */
function divides(kind: Kind, key: string): boolean {
  let keys = dividing.get(kind);
  if (keys === undefined) {
    keys = new Set(Object.keys(kind.fields).filter((one) => (kind.fields[one] as Field).value.measures?.some((measure) => measure === 'money' || measure === 'distance')));
    dividing.set(kind, keys);
  }
  return keys.has(key);
}

function textOf({ at }: Amount): string {
  return at.block.text.slice(at.start, at.end);
}
