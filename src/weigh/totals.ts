import type { Fee, Shop, Tax, Taxable } from '../estimate/index.js';
import { given, percentage, sum, type Figure } from './figure.js';
import type { Line, LineKind } from './line.js';
import type { Money } from './money.js';
import { hoursOf } from './price-labour.js';
import { feeLine } from './price-goods.js';

/** One tax of an option: what it was worked from and what it comes to. */
export interface TaxLine {
  readonly tax: Tax;
  readonly amount: Figure;
  /** The part of it that stands on core charges, and comes back with them or not. */
  readonly onCores: Figure;
}

/** What an option comes to. Every sum is of rounded lines, so shown lines add up to shown totals to the cent. */
export interface Totals {
  readonly lines: readonly Line[];
  readonly hours: Figure;
  /** Hours of getting in and closing up. */
  readonly accessHours: Figure;
  readonly labour: Figure;
  readonly access: Figure;
  readonly parts: Figure;
  readonly sublets: Figure;
  readonly fees: Figure;
  readonly cores: Figure;
  readonly taxes: readonly TaxLine[];
  readonly tax: Figure;
  readonly total: Figure;
}

const TAXABLE: Readonly<Record<Exclude<LineKind, 'core'>, Taxable>> = { labour: 'labour', part: 'parts', sublet: 'sublets', fee: 'fees' };

/** Adds up the lines of an option, works out its fees and taxes. Shop fees are charged where there is labour. */
export function total(label: string, lines: readonly Line[], fees: readonly Fee[], shop: Shop, money: Money): Totals {
  const of = (kind: LineKind, what: string, share?: Line['share']) => sum(what, 'money', lines.filter((line) => line.kind === kind && (share === undefined || line.share === share)).map((line) => line.amount));
  const sums = { labour: of('labour', 'All labour'), parts: of('part', 'All parts'), sublets: of('sublet', 'All outside work') };
  const charged = lines.some((line) => line.kind === 'labour') ? [...fees, ...shop.fees.filter((fee) => !fees.includes(fee))] : fees;
  const add = (what: string, from: readonly Figure[]) => sum(what, 'money', from);
  const feeLines = charged.flatMap((fee) => feeLine(fee, sums, add, money) ?? []).filter((line) => !line.amount.high.isZero());
  const all = [...lines, ...feeLines];

  const labour = of('labour', 'Labour on the work', 'work');
  const parts = of('part', 'Parts', 'work');
  const sublets = of('sublet', 'Outside work', 'work');
  const feeSum = sum('Fees', 'money', all.filter((line) => line.kind === 'fee' && line.share === 'work').map((line) => line.amount));
  const cores = of('core', 'Core charges');
  const access = sum('Getting in and closing up', 'money', lines.filter((line) => line.share === 'access').map((line) => line.amount));
  const taxes = shop.taxes.map((tax) => taxLine(tax, all, shop, money));
  const tax = sum('Tax', 'money', taxes.map((one) => one.amount));
  return {
    lines: all,
    hours: hoursOf('Hours of work', lines),
    accessHours: hoursOf('Hours of getting in and closing up', lines.filter((line) => line.share === 'access')),
    labour, access, parts, sublets, fees: feeSum, cores, taxes, tax,
    total: sum(label, 'money', [access, labour, parts, sublets, feeSum, cores, tax]),
  };
}

/** By item: each line's tax is rounded. By invoice: the sum is taxed and rounded once. Never both. */
function taxLine(tax: Tax, lines: readonly Line[], shop: Shop, money: Money): TaxLine {
  const percent = given(tax.title, 'percent', tax.percent);
  const goods = lines.filter((line) => line.kind !== 'core' && tax.on.has(TAXABLE[line.kind]) && !line.amount.high.isZero());
  // A core charge is taxed as the part it belongs to, and only where the shop's policy for its condition says so.
  const cores = tax.on.has('parts') ? lines.filter((line) => line.kind === 'core' && policyFor(line, shop) !== 'none') : [];
  if (tax.basis === 'item') {
    const each = (line: Line) => percentage(`${tax.title} on ${line.title}`, line.amount, percent, money, tax.at);
    const onCores = sum(`${tax.title} on core charges`, 'money', cores.map(each));
    return { tax, onCores, amount: sum(tax.title, 'money', [...goods.map(each), ...(cores.length > 0 ? [onCores] : [])], tax.at) };
  }
  const base = sum(`What ${tax.title} is charged on`, 'money', [...goods, ...cores].map((line) => line.amount));
  const coreBase = sum('Taxed core charges', 'money', cores.map((line) => line.amount));
  return {
    tax,
    amount: percentage(tax.title, base, percent, money, tax.at),
    onCores: percentage(`${tax.title} on core charges`, coreBase, percent, money, tax.at),
  };
}

/** Without a rule in the shop file a core charge is not taxed. */
export function policyFor(core: Line, shop: Shop): 'kept' | 'refunded' | 'none' {
  return (core.condition === undefined ? undefined : shop.coreTax.get(core.condition)?.policy) ?? 'none';
}
