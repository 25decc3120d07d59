import { Slot } from '../language/index.js';
import { heldByPriced, type Fee, type MarkupBand, type Part, type Shop, type Sublet } from '../estimate/index.js';
import { zero, type Amount } from '../vocabulary/index.js';
import { found, given, least, percentage, product, raised, sum, type Figure } from './figure.js';
import type { Line, LineKind } from './line.js';
import type { Money } from './money.js';

/** The price of one piece: as written, or its cost with the markup of the first band that reaches it. */
function unitPrice(goods: Part | Sublet, bands: readonly MarkupBand[]): Figure | undefined {
  if (goods.price !== undefined) return given('Price', 'money', goods.price);
  const { cost } = goods;
  if (cost === undefined) return undefined;
  const base = given('Cost', 'money', cost);
  const band = bandFor(cost, bands);
  return band === undefined ? base : raised('Price from cost', base, given('Markup', 'percent', band.percent));
}

/** The band is chosen by the likely cost, so that low and high are priced alike. */
export function bandFor(cost: Amount, bands: readonly MarkupBand[]): MarkupBand | undefined {
  return bands.find((band) => band.upTo === undefined || cost.likely.lte(band.upTo.likely));
}

function goodsLine(kind: LineKind, share: Line['share'], goods: Part | Sublet, price: Figure | undefined, money: Money): Line {
  const quantity = goods.quantity === undefined ? undefined : given('Quantity', 'number', goods.quantity);
  const amount = price === undefined
    ? found(goods.title, 'money', zero, 'No price is known for this line, so it has no amount yet.')
    : product(goods.title, quantity === undefined ? [price] : [quantity, price], money, goods.at);
  return { kind, share, title: goods.title, name: goods.name, at: goods.at, record: goods.record, amount, hours: undefined, quantity, condition: 'condition' in goods ? goods.condition : undefined, with: [] };
}

interface Kept {
  readonly share: Line['share'];
  readonly shop: Shop;
  readonly money: Money;
  readonly line: Line;
}

const lines = new Slot<Kept>(heldByPriced);

export function partLine(part: Part, share: Line['share'], shop: Shop, money: Money): Line {
  const before = lines.get(part);
  if (before !== undefined && before.share === share && before.shop === shop && before.money === money) return before.line;
  const line = makePartLine(part, share, shop, money);
  lines.set(part, { share, shop, money, line });
  return line;
}

function makePartLine(part: Part, share: Line['share'], shop: Shop, money: Money): Line {
  if (part.condition === 'customer-supplied') {
    const nothing = found(part.title, 'money', zero, 'Brought by the customer, so it is not charged.');
    return { ...goodsLine('part', share, part, undefined, money), amount: nothing };
  }
  return goodsLine('part', share, part, unitPrice(part, shop.markup.parts), money);
}

export function subletLine(sublet: Sublet, share: Line['share'], shop: Shop, money: Money): Line {
  return goodsLine('sublet', share, sublet, unitPrice(sublet, shop.markup.sublets), money);
}

/** The charge for an old unit, for as many as there are parts. */
export function coreLine(part: Part, money: Money): Line | undefined {
  const core = part.core;
  if (core?.charge === undefined || part.condition === 'customer-supplied') return undefined;
  const title = `${part.title}: core charge`;
  const quantity = part.quantity === undefined ? undefined : given('Quantity', 'number', part.quantity);
  const charge = given('Core charge', 'money', core.charge);
  return {
    kind: 'core', share: 'work', title, name: part.name, at: core.at, record: core.record,
    amount: product(title, quantity === undefined ? [charge] : [quantity, charge], money, core.at),
    hours: undefined, quantity, condition: part.condition, with: [],
  };
}

/** A fee; `sums` are the sums that it may be a percentage of. Undefined where it can't be worked out. */
export function feeLine(fee: Fee, sums: { readonly [of in 'labour' | 'parts' | 'sublets']: Figure }, money: Money): Line | undefined {
  const amount = feeAmount(fee, sums, money);
  if (amount === undefined) return undefined;
  const capped = fee.cap === undefined ? amount : least(fee.title, [amount, product('At most', [given('At most', 'money', fee.cap)], money, fee.cap.at)]);
  const quantity = fee.quantity === undefined ? undefined : given('Quantity', 'number', fee.quantity);
  return { kind: 'fee', share: 'work', title: fee.title, name: fee.name, at: fee.at, record: fee.record, amount: capped, hours: undefined, quantity, condition: undefined, with: [] };
}

function feeAmount(fee: Fee, sums: { readonly [of in 'labour' | 'parts' | 'sublets']: Figure }, money: Money): Figure | undefined {
  if (fee.price !== undefined && fee.percent === undefined) {
    const price = given('Amount', 'money', fee.price);
    return product(fee.title, fee.quantity === undefined ? [price] : [given('Quantity', 'number', fee.quantity), price], money, fee.at);
  }
  // An amount beside the percentage, or a count before it, has its message: it could be meant in two ways.
  if (fee.percent === undefined || fee.price !== undefined || fee.quantity !== undefined || fee.of.length === 0) return undefined;
  const bases = fee.of.map((of) => sums[of]);
  const base = bases.length === 1 ? (bases[0] as Figure) : sum(`What ${fee.title} is a percentage of`, 'money', bases);
  return percentage(fee.title, base, given('Percentage', 'percent', fee.percent), money, fee.at);
}
