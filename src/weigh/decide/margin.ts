import type { Estimate, Shop } from '../../estimate/index.js';
import type { Amount, Decimal } from '../../vocabulary/index.js';
import { difference, given, product, sum, type Figure } from '../figure.js';
import type { Line } from '../line.js';
import type { Money } from '../money.js';
import type { Weighed } from '../weigh.js';

/** What stays with the shop of one sort of sale: its price less what it costs the shop. */
export interface MarginOf {
  readonly sort: 'labour' | 'parts' | 'outside';
  /** The lines whose cost to the shop is known. */
  readonly sold: Figure;
  readonly cost: Figure;
  readonly margin: Figure;
  /** Lines with an amount whose cost nobody wrote down; they are in none of these figures. */
  readonly unknown: readonly Line[];
}

/** For the shop's eyes only: never on a page that a customer sees. */
export interface Margin {
  readonly by: readonly MarginOf[];
  readonly margin: Figure;
  /** Rounded to the smallest coin; undefined where there are no hours, or no day in the bay, or what they cost the shop is not all written. */
  readonly perHour: Decimal | undefined;
  readonly perBayDay: Decimal | undefined;
}

const MINUTES = 60;
/** Decimals of minutes: more than are ever written, fewer than a third is cut after. */
const KEPT = 40;

export function marginOf(weighed: Weighed, estimate: Estimate, money: Money): Margin {
  const { totals, ready } = weighed;
  const sorts = [['labour', 'labour'], ['parts', 'part'], ['outside', 'sublet']] as const;
  const by = sorts.map(([sort, kind]) => marginOn(sort, totals.lines.filter((line) => line.kind === kind), estimate.shop, money));
  const margin = sum('Margin', 'money', by.map((of) => of.margin));
  // Hours may be thirds without end, minutes are whole: half a coin must not depend on where a third is cut.
  const per = (count: Decimal) => (count.isZero() ? undefined : money.round(margin.likely.times(MINUTES).div(count.times(MINUTES).toDecimalPlaces(KEPT))));
  if (by.some(({ sort, unknown }) => sort === 'labour' && unknown.length > 0)) return { by, margin, perHour: undefined, perBayDay: undefined };
  return { by, margin, perHour: per(totals.hours.likely), perBayDay: per(ready.bay.likely) };
}

const LABELS = { labour: 'Labour', parts: 'Parts', outside: 'Outside work' } as const;

function marginOn(sort: MarginOf['sort'], lines: readonly Line[], shop: Shop, money: Money): MarginOf {
  const known: { readonly line: Line; readonly cost: Figure }[] = [];
  const unknown: Line[] = [];
  for (const line of lines) {
    const cost = costOf(line, shop, money);
    if (cost !== undefined) known.push({ line, cost });
    else if (!line.amount.likely.isZero()) unknown.push(line);
  }
  const label = LABELS[sort];
  const sold = sum(`${label}: sold for`, 'money', known.map(({ line }) => line.amount));
  const cost = sum(`${label}: costs the shop`, 'money', known.map((one) => one.cost));
  return { sort, sold, cost, margin: difference(`${label}: margin`, 'money', [sold, cost]), unknown };
}

/** What a line costs the shop: its hours at the cost of their class, or its pieces at their cost. */
function costOf(line: Line, shop: Shop, money: Money): Figure | undefined {
  if (line.kind === 'labour') return labourCost(line, shop, money);
  const cost = line.record.values['cost'] as Amount | undefined;
  if (cost === undefined) return undefined;
  const each = given('Cost', 'money', cost);
  return product(`${line.title}: cost`, line.quantity === undefined ? [each] : [line.quantity, each], money, cost.at);
}

function labourCost(line: Line, shop: Shop, money: Money): Figure | undefined {
  const leaf = rateLeaf(line.amount);
  const rate = [...shop.rates.values()].find(({ price }) => price.at === leaf?.at);
  if (rate?.cost === undefined) return undefined;
  // The times behind the amount and not the hours: thirds of an hour have no end, and half a coin must not depend on where they are cut.
  const { from, step } = line.amount;
  const times = from.filter((figure) => figure !== leaf);
  return product(`${line.title}: cost`, [...times, given(`${rate.title}: cost of an hour`, 'money', rate.cost)], money, rate.cost.at, step.kind === 'product' ? step.per : 1);
}

/** The price of an hour that an amount was made with. */
function rateLeaf(amount: Figure): Figure | undefined {
  return amount.from.findLast((figure) => figure.unit === 'money' && figure.step.kind === 'given');
}

