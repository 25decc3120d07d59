import { Decimal } from '../../vocabulary/index.js';

/** How a table writes its decimals, as far as its cells tell; undefined where they don't, or not alike. */
export type DecimalMark = 'point' | 'comma' | undefined;

const currency = /^(?:[A-Z]{3}\s*|\p{Sc}\s*)?([\d.,' \u00a0]*\d)(?:\s*\p{Sc}|\s*[A-Z]{3})?$/u;
const forms: readonly { readonly pattern: RegExp; readonly mark: DecimalMark }[] = [
  { pattern: /^\d+\.\d{1,2}$|^\d+\.\d{4,6}$|^\d{1,3}(,\d{3})+\.\d+$/, mark: 'point' },
  { pattern: /^\d+,\d{1,2}$|^\d+,\d{4,6}$|^\d{1,3}(\.\d{3})+,\d+$/, mark: 'comma' },
];

/** The digits of a cell without its currency, or undefined where it is no figure. */
function digitsOf(cell: string): string | undefined {
  const digits = currency.exec(cell.trim())?.[1];
  if (digits === undefined) return undefined;
  // A space or an apostrophe may divide thousands, and nothing else.
  const joined = /^\d{1,3}(?:[' \u00a0]\d{3})+(?:[.,]\d+)?$/.test(digits) ? digits.replace(/[' \u00a0]/g, '') : digits;
  return /^\d[\d.,]*$/.test(joined) ? joined : undefined;
}

/** What decides the mark are cells that can be read in one way only. */
export function decimalMarkOf(cells: Iterable<string>): DecimalMark {
  const marks = new Set<DecimalMark>();
  for (const cell of cells) {
    const digits = digitsOf(cell);
    const form = digits === undefined ? undefined : forms.find(({ pattern }) => pattern.test(digits));
    if (form !== undefined) marks.add(form.mark);
  }
  return marks.size === 1 ? [...marks][0] : undefined;
}

/** A cell's figure. Undefined where it is none, and where 1,234 could be two different figures. */
export function figureOf(cell: string, mark: DecimalMark): Decimal | undefined {
  const digits = digitsOf(cell);
  if (digits === undefined) return undefined;
  const plain = plainDigits(digits, mark);
  return plain === undefined || plain.length > 18 ? undefined : new Decimal(plain);
}

function plainDigits(digits: string, mark: DecimalMark): string | undefined {
  if (/^\d+$/.test(digits)) return digits;
  const own = forms.find(({ pattern }) => pattern.test(digits))?.mark;
  if (own === 'point') return digits.replaceAll(',', '');
  if (own === 'comma') return digits.replaceAll('.', '').replace(',', '.');
  // What is left has groups of three behind each mark: thousands, or three decimals.
  if (/^\d{1,3}(,\d{3})+$/.test(digits)) return mark === 'point' ? digits.replaceAll(',', '') : mark === 'comma' && digits.split(',').length === 2 ? digits.replace(',', '.') : digits.split(',').length > 2 ? digits.replaceAll(',', '') : undefined;
  if (/^\d{1,3}(\.\d{3})+$/.test(digits)) return mark === 'comma' || digits.split('.').length > 2 ? digits.replaceAll('.', '') : mark === 'point' ? digits : undefined;
  return /^\d+\.\d{3}$/.test(digits) ? digits : undefined;
}

/** Whether a cell is certainly money and not a count: it has a sign, a currency or decimals. */
export function looksLikeMoney(cell: string): boolean {
  return /\p{Sc}|\b[A-Z]{3}\b/u.test(cell) || /[.,]\d{2}\D*$/.test(cell.trim());
}
