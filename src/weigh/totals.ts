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

/** What an option needs whatever the way in: its goods, and work that no way in makes quicker. Summed once. */
export interface Fixed {
  readonly lines: readonly Line[];
  readonly labour: readonly Line[];
  readonly parts: Figure;
  readonly sublets: Figure;
  readonly hires: readonly Line[];
  readonly cores: Figure;
}

export function fixedOf(lines: readonly Line[]): Fixed {
  return {
    lines,
    labour: ofKind(lines, 'labour'),
    parts: added('Parts', ofKind(lines, 'part')),
    sublets: added('Outside work', ofKind(lines, 'sublet')),
    hires: ofKind(lines, 'fee'),
    cores: added('Core charges', ofKind(lines, 'core')),
  };
}

/** Adds up the lines of an option, works out its fees and taxes. Shop fees are charged where there is labour. */
export function total(label: string, jobs: readonly Line[], opened: readonly Line[], fixed: Fixed, fees: readonly Fee[], shop: Shop, money: Money): Totals {
  // A part that comes with a way in may bring a core: its charge, and putting it together, are not for getting in.
  const gettingIn = opened.filter((line) => line.share === 'access');
  const brought = opened.filter((line) => line.share === 'work');
  const work = jobs.concat(fixed.labour, ofKind(brought, 'labour'));
  const labour = added('Labour on the work', work);
  const broughtCores = added('Core charges of parts for getting in', ofKind(brought, 'core'));
  const opening = { labour: added('Labour of getting in', ofKind(gettingIn, 'labour')), parts: added('Parts for getting in', ofKind(opened, 'part')), sublets: added('Outside work for getting in', ofKind(opened, 'sublet')) };
  const both = (what: string, own: Figure, ofOpening: Figure) => (ofOpening.from.length === 0 ? own : sum(what, 'money', [own, ofOpening]));
  const sums = {
    labour: both('All labour', labour, opening.labour),
    parts: both('All parts', fixed.parts, opening.parts),
    sublets: both('All outside work', fixed.sublets, opening.sublets),
  };
  const charged = work.length > 0 || opening.labour.from.length > 0 ? [...fees, ...shop.fees.filter((fee) => !fees.includes(fee))] : fees;
  const feeLines = charged.flatMap((fee) => feeLine(fee, sums, money) ?? []);
  const hires = [...fixed.hires, ...feeLines];
  const feeSum = added('Fees', hires);
  const cores = both('Core charges', fixed.cores, broughtCores);
  const access = added('Getting in and closing up', gettingIn);
  const all = opened.concat(jobs, fixed.lines, feeLines);
  const counted = feeLines.filter((line) => !line.amount.high.isZero());
  const feesForTax = both('All fees', feeSum, added('Hire for getting in', ofKind(opened, 'fee')));
  const taxes = shop.taxes.map((tax) => taxLine(tax, { ...sums, fees: feesForTax }, all, shop, money));
  const tax = sum('Tax', 'money', taxes.map((one) => one.amount));
  const accessHours = hoursOf('Hours of getting in and closing up', gettingIn);
  return {
    // A fee that comes to nothing is no line of the quote; its sum keeps it, since it may come to something when a figure moves.
    lines: counted.length === feeLines.length ? all : opened.concat(jobs, fixed.lines, counted),
    hours: sum('Hours of work', 'hours', [accessHours, hoursOf('Hours on the work', work)]),
    accessHours, labour, access,
    parts: fixed.parts, sublets: fixed.sublets, fees: feeSum, cores, taxes, tax,
    total: sum(label, 'money', [access, labour, fixed.parts, fixed.sublets, feeSum, cores, tax]),
  };
}

function ofKind(lines: readonly Line[], kind: LineKind): Line[] {
  return lines.filter((line) => line.kind === kind);
}

function added(label: string, lines: readonly Line[]): Figure {
  return sum(label, 'money', lines.map((line) => line.amount));
}

const TAXABLE: Readonly<Record<Exclude<LineKind, 'core'>, Taxable>> = { labour: 'labour', part: 'parts', sublet: 'sublets', fee: 'fees' };

/** By item: each line's tax is rounded. By invoice: the sum is taxed and rounded once. Never both. */
function taxLine(tax: Tax, sums: { readonly [on in Taxable]: Figure }, lines: readonly Line[], shop: Shop, money: Money): TaxLine {
  const percent = given(tax.title, 'percent', tax.percent);
  // A core charge is taxed as the part it belongs to, and only where the shop's policy for its condition says so.
  const cores = tax.on.has('parts') ? ofKind(lines, 'core').filter((line) => policyFor(line, shop) !== 'none') : [];
  if (tax.basis === 'item') {
    const each = (line: Line) => percentage(`${tax.title} on ${line.title}`, line.amount, percent, money, tax.at);
    const goods = lines.filter((line) => line.kind !== 'core' && tax.on.has(TAXABLE[line.kind]));
    const onCores = sum(`${tax.title} on core charges`, 'money', cores.map(each));
    return { tax, onCores, amount: sum(tax.title, 'money', [...goods.map(each), ...(cores.length > 0 ? [onCores] : [])], tax.at) };
  }
  const coreBase = added('Taxed core charges', cores);
  const taxed = (['labour', 'parts', 'sublets', 'fees'] as const).filter((on) => tax.on.has(on)).map((on) => sums[on]);
  const base = sum(`What ${tax.title} is charged on`, 'money', [...taxed, ...(cores.length > 0 ? [coreBase] : [])]);
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
