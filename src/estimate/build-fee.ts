import { problem, type Problem } from '../language/index.js';
import type { kinds, RecordOf } from '../vocabulary/index.js';
import * as moneyRules from './money-rules.js';
import { remember } from './remember.js';
import * as sense from './sense-rules.js';
import type { Fee } from './shop-types.js';
import { sourceOf, titleOf } from './source.js';
import { wordsIn } from './words-in.js';

export function buildFee(record: RecordOf<typeof kinds.fee>, problems: Problem[]): Fee | undefined {
  return remember(record, [], problems, (own) => makeFee(record, own));
}

function makeFee(record: RecordOf<typeof kinds.fee>, problems: Problem[]): Fee | undefined {
  const { values } = record;
  const title = titleOf(record);
  if (title === undefined) return undefined;
  const of = wordsIn(values.of);
  if (!record.broken) {
    const lacks = values.price === undefined && values.percent === undefined ? 'amount' : values.price !== undefined && values.percent !== undefined ? 'one' : values.percent !== undefined && of.length === 0 ? 'of' : values.percent !== undefined && values.quantity !== undefined ? 'count' : undefined;
    if (lacks !== undefined) problems.push(problem(moneyRules.feeUnclear, record.at, { lacks }));
  }
  if (values.quantity?.high.isZero() === true) problems.push(problem(sense.quantityOfNothing, values.quantity.at, undefined));
  return { ...sourceOf(record), name: record.name?.name, title, quantity: values.quantity, price: values.price, percent: values.percent, of, cap: values.cap };
}
