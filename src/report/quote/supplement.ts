import type { Decimal, Record } from '../../vocabulary/index.js';
import { sameLines, type VersionRead } from '../../weigh/changes/index.js';
import { authorisedIn, type Comparison, type Decision, type Weighed } from '../../weigh/index.js';
import { lineWriter } from './lines.js';
import { quoteOf, type NoQuote } from './quote.js';
import { besidesOf, depositsMoved, type Besides, type DepositMoved } from './supplement-besides.js';
import { supplementLines, supplementTaxes, type Priced, type SupplementLine, type SupplementTax } from './supplement-lines.js';
import type { Digits, IsoDate, Quote, QuoteHead } from './types.js';

/**
 * What a customer is asked for when a job comes to more than was authorised: only what is new, the revised total with
 * what comes back of it and when it is ready, and room for the new authorisation. Sold amounts only, as in a quote.
 */
export interface Supplement extends QuoteHead, Pick<Quote, 'option' | 'total' | 'comesBack' | 'ready' | 'warranty' | 'leavesOut'> {
  readonly authorised: { readonly amount: Digits; readonly on: IsoDate | undefined; readonly by: string | undefined };
  /** The revised total less what was authorised; negative where it is less. */
  readonly more: Digits;
  /** Those of which something is new; all of them where that can't be told. */
  readonly deposits: readonly DepositMoved[];
  readonly news: News;
}

/** What is new since the version that was authorised, or why it can't be told line by line. */
type News =
  | { readonly kind: 'listed'; readonly total: Digits; readonly lines: readonly SupplementLine[]; readonly taxes: readonly SupplementTax[]; readonly before: Besides }
  | { readonly kind: 'unlisted'; readonly why: WhyUnlisted };

export type WhyUnlisted = 'no-version' | 'no-option' | 'incomplete' | 'other-currency';

type Supplemented = { readonly kind: 'supplement'; readonly supplement: Supplement } | { readonly kind: 'not-authorised'; readonly name: string | undefined } | NoQuote;

/** The version that was authorised, and what the estimate says now: to find the lines of the one in the other. */
interface Since {
  readonly before: VersionRead;
  readonly records: readonly Record[];
}

/**
 * The supplement to what was authorised for an option; without a name for the option authorised last. `since` is there
 * where the version that was authorised is at hand.
 */
export function supplementOf(decision: Decision, name: string | undefined, since: Since | undefined): Supplemented {
  const { comparison } = decision;
  const { estimate, money } = comparison;
  const coins = (value: Decimal) => value.toFixed(money.currency.digits);
  const agreed = authorisedIn(comparison).filter(({ of }) => comparison.options.some(({ option }) => option === of));
  const held = agreed.find((one) => (name === undefined ? one.since === undefined : one.of.name === name));
  if (held === undefined && (name === undefined || comparison.options.some(({ option }) => option.name === name))) return { kind: 'not-authorised', name };
  const made = quoteOf(decision, held?.of.name ?? name, new Map());
  if (made.kind !== 'quote') return made;
  if (held === undefined) return { kind: 'not-authorised', name };
  const { option, total, comesBack, ready, warranty, leavesOut, deposits, locale, currency, shop, title, written, validUntil, vehicle, findings } = made.quote;
  const known = new Set(since?.before.comparison.estimate.findings.map((one) => one.title));
  const weighed = comparison.options.find((one) => one.option === held.of) as Weighed;
  const { news, moved } = newsOf(weighed, estimate, since, money);
  return {
    kind: 'supplement',
    supplement: {
      locale, currency, shop, title, written, validUntil, vehicle, option, total, comesBack, ready, warranty, leavesOut, news,
      // Pictures are left to the estimate itself; what was found since is told in words.
      findings: since === undefined ? [] : findings.filter((one) => !known.has(one.title)).map((one) => ({ ...one, pictures: [] })),
      authorised: { amount: coins(money.round(held.amount.likely)), on: held.authorised.on, by: held.authorised.by },
      more: coins(weighed.totals.total.likely.minus(money.round(held.amount.likely))),
      deposits: moved ?? deposits.map((deposit) => ({ deposit, before: undefined })),
    },
  };
}

interface Told {
  readonly news: News;
  readonly moved?: readonly DepositMoved[];
}

function newsOf(weighed: Weighed, estimate: Comparison['estimate'], since: Since | undefined, money: Comparison['money']): Told {
  const unlisted = (why: WhyUnlisted): Told => ({ news: { kind: 'unlisted', why } });
  if (since === undefined) return unlisted('no-version');
  const { before: { comparison: before, records }, records: today } = since;
  const then = before.options.find(({ option }) => option.name === weighed.option.name);
  if (then === undefined) return unlisted('no-option');
  if (!then.complete) return unlisted('incomplete');
  if (before.money.currency.code !== money.currency.code) return unlisted('other-currency');
  const { digits } = money.currency;
  const coins = (value: Decimal) => value.toFixed(digits);
  const [old, now] = [priced(then, before.estimate, digits), priced(weighed, estimate, digits)];
  const same = sameLines(records, today);
  return {
    news: { kind: 'listed', total: coins(then.totals.total.likely), lines: supplementLines(old, now, same, money), taxes: supplementTaxes(old, now, money), before: besidesOf(then, coins) },
    moved: depositsMoved(then, weighed, same, coins),
  };
}

function priced(weighed: Weighed, estimate: Comparison['estimate'], digits: number): Priced {
  return { totals: weighed.totals, write: lineWriter(weighed, estimate, estimate.findings, digits) };
}
