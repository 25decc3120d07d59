import { units } from '../../vocabulary/index.js';
import { figureOf, looksLikeMoney, type DecimalMark } from './pasted-figures.js';

/** What a column of a pasted table holds. */
export type Role = 'number' | 'description' | 'quantity' | 'price' | 'total' | 'other';

/** How the heads of such columns are usually called. */
const heads: readonly { readonly role: Role; readonly pattern: RegExp }[] = [
  { role: 'other', pattern: /^(#|pos\.?|position|line|row|ln)$/ },
  { role: 'total', pattern: /^(line |row |net |ext(\.|ended)? ?)*(total|amount|sum|ext\.?|extended|value)( price)?( ?\(.*\))?$/ },
  { role: 'price', pattern: /^(unit|net|list|each|your|cost)? ?\/?(price|cost|each|rate|ea\.?)( each| per unit| per piece|\/unit| ea\.?)?( ?\(.*\))?$/ },
  { role: 'quantity', pattern: /^(qty\.?|quantity|count|pcs\.?|pieces|number of|ordered|units?)( ordered)?$/ },
  { role: 'number', pattern: /^(part|item|article|art\.?|stock|order|product|catalogue|sku|oem?|ref\.?|reference)? ?-?(no\.?|number|num\.?|nr\.?|code|#|sku|ref\.?|reference|id)$|^(sku|article|item|part|ref\.?)$/ },
  { role: 'description', pattern: /^(part |item |product )?(description|desc\.?|title|text|name|product|details?|designation)$/ },
];

/** The roles of a head row, or undefined where it is none. */
export function headRoles(cells: readonly string[]): readonly Role[] | undefined {
  const roles = cells.map((cell): Role => heads.find(({ pattern }) => pattern.test(cell.trim().toLowerCase()))?.role ?? 'other');
  const once = new Set(roles.filter((role) => role !== 'other'));
  // A table of names and prices may call its descriptions Part.
  const named = once.has('description') ? roles : roles.map((role): Role => (role === 'number' ? 'description' : role));
  return once.size >= 2 && named.includes('description') && (once.has('price') || once.has('total')) ? named : undefined;
}

/** The roles of columns without heads, from what they hold. */
export function guessedRoles(rows: readonly (readonly string[])[], mark: DecimalMark): readonly Role[] | undefined {
  const width = Math.max(...rows.map((row) => row.length));
  const columns = Array.from({ length: width }, (_, i) => rows.map((row) => (row[i] ?? '').trim()).filter((cell) => cell !== ''));
  const roles: Role[] = columns.map(() => 'other');
  const letters = columns.map((cells) => average(cells.map((cell) => cell.replace(/[^\p{L} ]/gu, '').length)));
  const texts = columns.flatMap((cells, i) => (cells.length > 0 && share(cells, (cell) => figureOf(cell, mark) === undefined && quantityOf(cell, mark) === undefined) > 0.5 && (letters[i] as number) >= 3 ? [i] : []));
  const description = texts.sort((a, b) => (letters[b] as number) - (letters[a] as number))[0];
  if (description === undefined) return undefined;
  roles[description] = 'description';
  const left = columns.map((_, i) => i).filter((i) => i !== description && (columns[i] as string[]).length > 0);
  const code = left.find((i) => share(columns[i] as string[], isCode) > 0.5);
  if (code !== undefined) roles[code] = 'number';
  let figures = left.filter((i) => i !== code && share(columns[i] as string[], (cell) => quantityOf(cell, mark) !== undefined) > 0.5);
  if (figures.length > 1 && figures[0] === 0 && rows.length > 1 && (columns[0] as string[]).every((cell, i) => cell === String(i + 1))) figures = figures.slice(1);
  const isMoney = (i: number) => (columns[i] as string[]).some(looksLikeMoney);
  const counts = figures.filter((i) => !isMoney(i));
  const moneys = figures.filter(isMoney);
  const [quantity] = counts;
  const prices = moneys.length > 0 ? moneys : counts.slice(1);
  if (prices[0] === undefined || prices.length > 2 || (moneys.length > 0 && counts.length > 1)) return undefined;
  if (quantity !== undefined) roles[quantity] = 'quantity';
  if (prices[1] === undefined) roles[prices[0]] = 'price';
  else Object.assign(roles, priceAndTotal(prices as [number, number], rows, mark));
  return roles;
}

/** The dearer of two columns of money is the total, row by row. */
function priceAndTotal([a, b]: readonly [number, number], rows: readonly (readonly string[])[], mark: DecimalMark): { readonly [column: number]: Role } {
  const dearerFirst = rows.filter((row) => figureOf(row[a] ?? '', mark)?.gt(figureOf(row[b] ?? '', mark) ?? Infinity) === true).length;
  const dearerLast = rows.filter((row) => figureOf(row[b] ?? '', mark)?.gt(figureOf(row[a] ?? '', mark) ?? Infinity) === true).length;
  return dearerFirst > dearerLast ? { [a]: 'total', [b]: 'price' } : { [a]: 'price', [b]: 'total' };
}

/** A count, with the unit that the language has for it, if any. */
export function quantityOf(cell: string, mark: DecimalMark): string | undefined {
  const [, digits, unit = ''] = /^([\d.,]+)\s*([A-Za-z]*)\.?$/.exec(cell.trim()) ?? [];
  const figure = digits === undefined ? figureOf(cell, mark) : figureOf(digits, mark);
  if (figure === undefined) return undefined;
  if (unit === '' || /^(pcs?|pieces?|ea|each|off|x|set|sets|units?)$/i.test(unit)) return figure.toFixed();
  const known = units.find(({ word, dimension }) => word.toLowerCase() === unit.toLowerCase() && ['volume', 'mass', 'length'].includes(dimension));
  return known !== undefined ? `${figure.toFixed()} ${known.word}` : digits === undefined ? figure.toFixed() : undefined;
}

/** A part number: digits with letters, hyphens or leading zeros, or a long run of digits; never a word of prose. */
function isCode(cell: string): boolean {
  return /^[A-Z0-9][A-Z0-9./-]{2,}$/i.test(cell) && /\d/.test(cell) && (/[A-Z/-]/i.test(cell) || /^0\d/.test(cell) || /^\d{5,}$/.test(cell));
}

function share<T>(list: readonly T[], holds: (one: T) => boolean): number {
  return list.length === 0 ? 0 : list.filter(holds).length / list.length;
}

function average(list: readonly number[]): number {
  return list.length === 0 ? 0 : list.reduce((sum, one) => sum + one, 0) / list.length;
}
