import { Decimal, kinds, partConditions } from '../../vocabulary/index.js';

/** One pasted row; without a price it could not be read and stays as a comment. */
export interface Row {
  readonly line: string;
  readonly description: string;
  /** The part number, or empty. */
  readonly number: string;
  /** With its unit, where it has one. */
  readonly quantity: string;
  readonly price: Decimal | undefined;
  /** The row's own total, as text where it can't be read. */
  readonly total: Decimal | string | undefined;
}

const DECIMALS = 2;
const [condition] = Object.keys(partConditions);

/** Part lines in columns, each row's part number and doubts in its comment. */
export function linesOfRows(rows: readonly Row[]): string[] {
  const read = rows.flatMap((row) => (row.price === undefined ? [] : [{ row, title: quoted(row.description), price: moneyOf(row.price) }]));
  const width = (texts: readonly string[]) => Math.max(0, ...texts.map((text) => text.length));
  const titles = width(read.map(({ title }) => title));
  const counts = width(read.map(({ row }) => whole(row.quantity)));
  const behind = width(read.map(({ row }) => row.quantity.slice(whole(row.quantity).length)));
  const prices = width(read.map(({ price }) => price));
  return rows.map((row) => {
    const own = read.find((one) => one.row === row);
    if (own === undefined) return `# ${plain(row.line)}`;
    const count = whole(row.quantity).padStart(counts) + row.quantity.slice(whole(row.quantity).length).padEnd(behind);
    const line = `${kinds.part.word} ${own.title.padEnd(titles)}  ${count} at ${own.price.padStart(prices)} ${condition ?? ''}`;
    const remarks = [row.number === '' ? undefined : plain(row.number), checkOf(row)].filter((one) => one !== undefined);
    return remarks.length === 0 ? line : `${line}  # ${remarks.join('; ')}`;
  });
}

/** What is to be looked at: a total that the row's own figures do not make. */
function checkOf({ quantity, price, total }: Row): string | undefined {
  if (total === undefined || price === undefined) return undefined;
  if (typeof total === 'string') return `check: the list's total is ${plain(total)}`;
  const made = price.times(new Decimal(quantity.split(' ')[0] as string));
  // A list rounds its totals to the coin, and so it may be half a coin off.
  return made.minus(total).abs().lt('0.01') ? undefined : `check: ${quantity} at ${moneyOf(price)} is ${moneyOf(made)}, the list says ${moneyOf(total)}`;
}

function whole(quantity: string): string {
  return /^\d+/.exec(quantity)?.[0] ?? '';
}

function moneyOf(value: Decimal): string {
  return value.decimalPlaces() > DECIMALS ? value.toFixed() : value.toFixed(DECIMALS);
}

function quoted(text: string): string {
  return `"${plain(text).replace(/["\\]/g, '\\$&')}"`;
}

/** One line of visible characters: a cell may hold line ends and marks that nobody sees. */
function plain(text: string): string {
  return text.replace(/\t/g, '  ').replace(/[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/g, '').replaceAll('\u00a0', ' ').trim();
}
