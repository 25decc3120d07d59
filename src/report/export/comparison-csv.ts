import type { Decimal } from '../../vocabulary/index.js';
import type { Comparison, Figure } from '../../weigh/index.js';
import { plain } from '../plain.js';

/**
 * The columns of the CSV, in order. One row for each line of each option, then one for each of its taxes: the amounts
 * of an option add up to its total, to the smallest coin. Options that are not whole say so; their amounts may be too
 * low. Numbers are decimal digits with a point, whatever the locale; there are no sums in it.
 */
export const csvColumns = {
  option: 'Name of the option.',
  option_title: 'Its title.',
  complete: 'yes, or no where a line that it rests on can’t be read or priced.',
  share: 'work, or access for what getting in and closing up takes.',
  kind: 'labour, part, sublet, fee, core or tax.',
  name: 'Name of the line, where it has one.',
  title: 'Its title.',
  condition: 'Condition of a part, where it is said.',
  quantity: 'How many, where that is not one.',
  hours: 'Hours of work.',
  amount_low: 'What it comes to if every figure comes in low.',
  amount: 'What is quoted.',
  amount_high: 'What it comes to if every figure comes in high.',
  currency: 'ISO 4217, where the shop names one.',
  ruled_out: 'Titles of the findings that speak against the option.',
} as const;

type Row = Readonly<Record<keyof typeof csvColumns, string>>;

/** The lines of every option as CSV (RFC 4180: lines end with CR LF, a header, quotes doubled). */
export function comparisonCsv({ options, money }: Comparison): string {
  const columns = Object.keys(csvColumns) as (keyof typeof csvColumns)[];
  const coins = (value: Decimal) => value.toFixed(money.currency.digits);
  const amounts = (figure: Figure) => ({ amount_low: coins(figure.low), amount: coins(figure.likely), amount_high: coins(figure.high), currency: money.currency.code });
  const rows = options.flatMap(({ option, totals, complete }): Row[] => {
    const of = { option: text(option.name), option_title: text(option.title), complete: complete ? 'yes' : 'no', ruled_out: option.ruledOutBy.length === 0 ? '' : text(option.ruledOutBy.map((one) => one.title).join('; ')) };
    return [
      ...totals.lines.map((line): Row => ({
        ...of, share: line.share, kind: line.kind, name: text(line.name ?? ''), title: text(line.title), condition: line.condition ?? '',
        quantity: line.quantity?.likely.toFixed() ?? '', hours: line.hours === undefined ? '' : line.hours.likely.toDecimalPlaces(6).toFixed(), ...amounts(line.amount),
      })),
      ...totals.taxes.filter(({ amount }) => !amount.high.isZero()).map(({ tax, amount }): Row => ({
        ...of, share: 'work', kind: 'tax', name: text(tax.name), title: text(tax.title), condition: '', quantity: '', hours: '', ...amounts(amount),
      })),
    ];
  });
  return [columns.join(','), ...rows.map((row) => columns.map((column) => row[column]).join(','))].map((line) => `${line}\r\n`).join('');
}

/**
 * A text of the file as a quoted cell. What a spreadsheet would take for a formula gets an apostrophe before it, which
 * makes it a text there: it starts with = + - @ or one of their full-width forms, be it after spaces.
 */
function text(written: string): string {
  const safe = plain(written);
  return `"${(/^\s*[=+\-@＝＋－＠]/.test(safe) ? `'${safe}` : safe).replaceAll('"', '""')}"`;
}
