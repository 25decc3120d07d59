import type { Decimal } from '../../vocabulary/index.js';
import { cautionsOf, type Comparison, type StageWeighed } from '../../weigh/index.js';
import { groupsOf, lineWriter } from './lines.js';
import type { PictureFiles } from './pictures.js';
import { headOf, ratesOf, taxesOf } from './quote.js';
import type { Digits, Quote, QuoteHead, QuoteLine } from './types.js';
import { PUT_TOGETHER } from './words.js';

/**
 * What a customer is told of a stage before it is done, as plain data. Sold amounts only, as in a quote.
 */
export interface StageQuote extends QuoteHead, Pick<Quote, 'groups' | 'taxes' | 'total' | 'range' | 'rates' | 'notes' | 'cautions'> {
  readonly stage: { readonly name: string; readonly title: string };
  /** Titles of the parts that it destroys. */
  readonly destroys: readonly string[];
  /** What putting everything back adds: its lines, and what fees and taxes come to more. */
  readonly putBack: { readonly lines: readonly QuoteLine[]; readonly feesAndTax: Digits; readonly amount: Digits };
  /** What is owed in all where it is put back and nothing more is done. */
  readonly stop: Digits;
  /** Titles of the ways out whose totals contain it. */
  readonly options: readonly string[];
}

export type StageQuoted =
  | { readonly kind: 'quote'; readonly quote: StageQuote }
  | { readonly kind: 'no-stage'; readonly name: string }
  | { readonly kind: 'incomplete'; readonly title: string };

/** The written estimate of one stage. Refused where it isn't there or rests on a line that can't be read or priced. */
export function stageQuoteOf(comparison: Comparison, name: string, files: PictureFiles): StageQuoted {
  const weighed = comparison.stages.find(({ stage }) => stage.name === name);
  if (weighed === undefined) return { kind: 'no-stage', name };
  if (!weighed.complete) return { kind: 'incomplete', title: weighed.stage.title };
  return { kind: 'quote', quote: quoted(weighed, comparison, files) };
}

function quoted(weighed: StageWeighed, { estimate, options, money }: Comparison, files: PictureFiles): StageQuote {
  const { stage, plan, totals, putBack, stop, backLines } = weighed;
  const { digits } = money.currency;
  const coins = (value: Decimal) => value.toFixed(digits);
  const goods = { labour: stage.labour, parts: [...stage.parts, ...stage.destroys], sublets: stage.sublets };
  const written = { option: goods, planned: { chosen: plan } };
  const write = lineWriter(written, estimate, estimate.findings, digits);
  const { low, high } = totals.total;
  const own = backLines.reduce((left, { amount }) => left.minus(amount.likely), putBack.likely);
  return {
    ...headOf(estimate, money, stage.title, files),
    stage: { name: stage.name, title: stage.title },
    groups: groupsOf(weighed, write, digits),
    taxes: taxesOf(weighed, estimate, coins),
    total: coins(totals.total.likely),
    range: low.eq(high) ? undefined : { low: coins(low), high: coins(high) },
    rates: ratesOf({ option: { parts: stage.parts }, planned: { chosen: plan } }, money),
    destroys: stage.destroys.map(({ title }) => title),
    putBack: { lines: backLines.map((line) => (line.record === stage.record ? { ...write(line), title: PUT_TOGETHER } : write(line))), feesAndTax: coins(own), amount: coins(putBack.likely) },
    stop: coins(stop.likely),
    options: options.filter(({ option }) => option.written).map(({ option }) => option.title),
    notes: estimate.notes,
    cautions: cautionsOf({ ...goods, cautions: [], fees: [] }, plan.paid),
  };
}
