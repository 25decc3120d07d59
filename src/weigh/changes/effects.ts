import { zero, type Decimal } from '../../vocabulary/index.js';
import type { Weighed } from '../weigh.js';
import { PriceAgain } from './again.js';
import { backShares } from './back-shares.js';
import { Causes, type Cause } from './causes.js';
import type { Drafts } from './drafts.js';
import { Ledger } from './ledger.js';
import { lineShares } from './line-shares.js';
import type { Matched } from './match.js';
import { MovedCauses } from './moved-causes.js';
import { OptionSides, type Versions } from './option-sides.js';
import type { Share, Workings } from './share.js';
import { taxShares } from './tax-shares.js';

/** An option in both versions, or in one. */
export interface WeighedPair {
  readonly before: Weighed | undefined;
  readonly after: Weighed | undefined;
}

/** Works out, to the smallest coin, who moved how much in every option. */
export function effectsOf(versions: Versions, matched: Matched, drafts: Drafts, options: readonly WeighedPair[]): Ledger {
  const ledger = new Ledger(options.length, versions.after.comparison.money.currency.digits);
  const again = new PriceAgain(versions, matched);
  const whys = { drafts, again, causes: new Causes(versions, matched, drafts), moved: new MovedCauses(versions, drafts, again) };
  options.forEach(({ before, after }, index) => {
    if (before !== undefined && after !== undefined) bookBoth({ ...whys, sides: new OptionSides({ index, before, after }, versions, matched) }, ledger);
    else bookWhole(index, before, after, versions, drafts, ledger);
  });
  return ledger;
}

/** An option that came or went counts in whole as that one change. */
function bookWhole(index: number, before: Weighed | undefined, after: Weighed | undefined, versions: Versions, drafts: Drafts, ledger: Ledger): void {
  const side = before === undefined ? 'after' : 'before';
  const weighed = (before ?? after) as Weighed;
  const thing = versions[side].things.of(weighed.option.record);
  const cause = (thing === undefined ? undefined : drafts.ofThing(thing)) ?? { sort: 'other' as const, title: weighed.option.title, option: undefined };
  const signed = (value: Decimal) => (side === 'before' ? value.neg() : value);
  const { totals, inAll } = weighed;
  ledger.book(index, 'total', [[cause, signed(totals.total.likely)]]);
  ledger.book(index, 'beside', [[cause, signed(inAll.likely.minus(totals.total.likely))]]);
}

/** An option that both versions have, line by line; taxes, and what comes back, by rules of their own. */
function bookBoth(workings: Workings, ledger: Ledger): void {
  const { index, before, after } = workings.sides.option;
  const booked = { total: zero, beside: zero };
  const put = (column: 'total' | 'beside', shares: readonly Share[]) => {
    for (const [, amount] of shares) booked[column] = booked[column].plus(amount);
    ledger.book(index, column, shares);
  };
  for (const pieces of workings.sides.allPieces()) put('total', lineShares(pieces, workings));
  for (const shares of taxShares(workings)) put('total', shares);
  for (const shares of backShares(workings)) put('beside', shares);
  put('beside', [[{ sort: 'worth', title: 'Worth given up', option: undefined }, (after.givenUp?.likely ?? zero).minus(before.givenUp?.likely ?? zero)]]);
  // What no rule above accounts for is told as such, never left out.
  const whole = after.totals.total.likely.minus(before.totals.total.likely);
  const all = after.inAll.likely.minus(before.inAll.likely);
  const other: Cause = { sort: 'other', title: 'Otherwise', option: undefined };
  put('total', [[other, whole.minus(booked.total).toDecimalPlaces(20)]]);
  put('beside', [[other, all.minus(whole).minus(booked.beside).toDecimalPlaces(20)]]);
}
