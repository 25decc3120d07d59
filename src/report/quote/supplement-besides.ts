import type { Decimal } from '../../vocabulary/index.js';
import type { SameLine } from '../../weigh/changes/index.js';
import type { Weighed } from '../../weigh/index.js';
import { waitOf } from './lines.js';
import { depositsOf } from './quote.js';
import type { Digits, IsoDate, QuoteDeposit, QuoteWait } from './types.js';

/** What the version before promised beside its price. Each is undefined where it promised nothing of the kind. */
export interface Besides {
  readonly comesBack: Digits | undefined;
  readonly ready: { readonly days: Digits; readonly date: IsoDate | undefined } | undefined;
  readonly warranty: QuoteWait | undefined;
  readonly leavesOut: readonly string[];
}

export function besidesOf({ option, returns, ready }: Weighed, coins: (value: Decimal) => Digits): Besides {
  return {
    comesBack: returns.cores.length === 0 ? undefined : coins(returns.refunds.likely.plus(returns.taxBack.likely)),
    ready: ready.bay.likely.isZero() ? undefined : { days: ready.days.likely.toFixed(), date: ready.date },
    warranty: option.warranty === undefined ? undefined : waitOf(option.warranty),
    leavesOut: option.leavesOut,
  };
}

/** A deposit of which something is not as it was; without `before` where it is new. */
export interface DepositMoved {
  readonly deposit: QuoteDeposit;
  readonly before: QuoteDeposit | undefined;
}

/** Deposits of which a customer was told something else than today. One that is no longer asked for is among the lines that went. */
export function depositsMoved(before: Weighed, now: Weighed, same: SameLine, coins: (value: Decimal) => Digits): readonly DepositMoved[] {
  const said = depositsOf(before, coins);
  const then = before.returns.cores.map(({ part }, i) => ({ part, deposit: said[i] as QuoteDeposit }));
  return depositsOf(now, coins).flatMap((deposit, i): DepositMoved[] => {
    const { part } = now.returns.cores[i] as CoreReturn;
    const called = then.filter((one) => nameOf(one.part) === nameOf(part));
    const thing = called.length > 0 ? undefined : same(part.record);
    const alike = thing === undefined ? called : then.filter((one) => same(one.part.record) === thing);
    const was = alike.find((one) => promise(one.deposit) === promise(deposit)) ?? alike[0];
    if (was === undefined) return [{ deposit, before: undefined }];
    then.splice(then.indexOf(was), 1);
    return promise(was.deposit) === promise(deposit) ? [] : [{ deposit, before: was.deposit }];
  });
}

type CoreReturn = Weighed['returns']['cores'][number];

function nameOf({ name, title }: CoreReturn['part']): string {
  return JSON.stringify([name ?? '', name === undefined ? title : '']);
}

/** What it says of money and days, whatever it is called. */
function promise(deposit: QuoteDeposit): string {
  return JSON.stringify({ ...deposit, title: '' });
}
