import type { Statement, Tree } from '../../language/index.js';
import { allKinds, kinds } from '../../vocabulary/index.js';
import { kindOf, locate, type At } from '../at.js';
import { stepOf } from './here.js';
import { guessedRoles, headRoles, quantityOf, type Role } from './pasted-columns.js';
import { decimalMarkOf, figureOf, looksLikeMoney } from './pasted-figures.js';
import { linesOfRows, type Row } from './pasted-lines.js';

/** Rows of a longer paste are left as they are: nobody means a part line for each. */
const MOST_ROWS = 500;
/** Below this share of rows that can be read, it is some other table. */
const ENOUGH = 0.5;

/** Rows of a spreadsheet or a supplier's list as part lines; undefined where the text is anything else. */
export function pastedRowsAt(tree: Tree, offset: number, pasted: string): { readonly text: string; readonly count: number } | undefined {
  const place = placeFor(tree, offset);
  const rows = place === undefined ? undefined : readRows(pasted);
  if (place === undefined || rows === undefined) return undefined;
  const lines = linesOfRows(rows);
  const end = pasted.slice(pasted.trimEnd().length).includes('\n') || place.goesOn ? '\n' : '';
  const eol = tree.text.includes('\r\n') ? '\r\n' : '\n';
  const text = `${place.start}${lines.map((line, i) => (i === 0 ? line : place.lead + line)).join('\n')}${end}`;
  return { text: text.replace(/\n/g, eol), count: rows.filter((row) => row.price !== undefined).length };
}

interface Place {
  /** What stands before the first line, and in front of all others. */
  readonly start: string;
  readonly lead: string;
  readonly goesOn: boolean;
}

/** Where part lines may stand nearest to the cursor: below an option or a way in, or else at the left edge. */
function placeFor(tree: Tree, offset: number): Place | undefined {
  const at = locate(tree, offset);
  if (at === undefined) return { start: '', lead: '', goesOn: false };
  const local = offset - at.start;
  const { text } = at.block;
  const lineStart = text.lastIndexOf('\n', local - 1) + 1;
  const before = text.slice(lineStart, local);
  const isInside = at.block.comments.some((one) => one.start < local && local <= one.end) || at.statement?.tokens.some((one) => one.kind === 'text' && one.start < local && (local < one.end || one.open === true));
  if (isInside === true) return undefined;
  const rest = text.slice(local).split(/\r?\n/, 1)[0] as string;
  const lead = leadAt(at, lineStart, before);
  const goesOn = rest.trim() !== '';
  if (before.trim() !== '') return { start: `\n${lead}`, lead, goesOn };
  return before.length <= lead.length && lead.startsWith(before) ? { start: lead.slice(before.length), lead, goesOn } : { start: `\n${lead}`, lead, goesOn };
}

function leadAt(at: At, lineStart: number, before: string): string {
  const trail = at.statement === undefined ? [...at.above] : [...at.above, at.statement];
  // Right below a line of an option, without an empty line between, the option goes on.
  const lineAbove = at.block.text.slice(at.block.text.lastIndexOf('\n', lineStart - 2) + 1, lineStart);
  if (trail.length === 0 && before === '' && lineStart > 0 && lineAbove.trim() !== '' && !lineAbove.startsWith('#')) {
    const last = [...at.block.statements].reverse().find((one) => (one.tokens[0]?.start ?? 0) < lineStart);
    if (last !== undefined) trail.push(last);
  }
  for (let depth = trail.length - 1; depth >= 0; depth--) {
    const above = trail[depth] as Statement;
    if (kindOf(above, trail.slice(0, depth))?.children.includes(kinds.part) !== true) continue;
    const child = above.children[0];
    const head = above.block.text.slice((above.tokens[0]?.start ?? 0) - above.indent, above.tokens[0]?.start);
    return child === undefined ? head + stepOf(before) : above.block.text.slice((child.tokens[0]?.start ?? 0) - child.indent, child.tokens[0]?.start);
  }
  return '';
}

const ownWords = new Set(allKinds.flatMap((kind) => [kind.word, ...[...kind.leads.keys()].map((lead) => lead.split(' ')[0] as string)]));

function readRows(pasted: string): readonly Row[] | undefined {
  const lines = pasted.split(/\r?\n/).map((line) => line.replace(/(?<![ \r])[ \r]+$/, '')).filter((line) => line.trim() !== '');
  if (lines.length === 0 || lines.length > MOST_ROWS) return undefined;
  const cut = cutterFor(lines);
  if (cut === undefined) return undefined;
  const table = lines.map((line) => cut(line));
  const head = headRoles(table[0] as readonly string[]);
  const body = head === undefined ? table : table.slice(1);
  if (body.length === 0) return undefined;
  const mark = decimalMarkOf(body.flat());
  const roles = head ?? guessedRoles(body, mark);
  if (roles === undefined) return undefined;
  // A name and a whole number is any two columns of anything; money tells a price list.
  if (head === undefined && !roles.includes('quantity') && !body.flat().some(looksLikeMoney)) return undefined;
  const rows = body.map((cells, i) => readRow(cells, lines[i + table.length - body.length] as string, roles, mark));
  return rows.filter((row) => row.price !== undefined).length >= rows.length * ENOUGH ? rows : undefined;
}

/** Cuts by tabs, semicolons or runs of spaces, whichever all but a few lines have. Lines of an estimate are none. */
function cutterFor(lines: readonly string[]): ((line: string) => string[]) | undefined {
  const most = (has: (line: string) => boolean) => lines.filter(has).length >= Math.max(1, lines.length * ENOUGH);
  const clean = (cell: string) => cell.trim().replace(/^"(.*)"$/, '$1').replaceAll('""', '"').trim();
  if (most((line) => line.includes('\t') && line.trim() !== '')) return (line) => line.split('\t').map(clean);
  if (most((line) => line.includes(';'))) return (line) => line.split(';').map(clean);
  const isOwn = (line: string) => ownWords.has(/^[a-z-]+/.exec(line.trim())?.[0] ?? '') || line.trim().startsWith('#');
  return most((line) => /\S {2,}\S/.test(line)) && !lines.some(isOwn) ? (line) => line.trim().split(/ {2,}/).map(clean) : undefined;
}

/** Rows that add others up are no parts. */
const SUMS = /^(sub-?\s?total|total|grand total|net total|sum|vat|tax|sales tax|amount due|balance)\b/i;

function readRow(cells: readonly string[], line: string, roles: readonly Role[], mark: ReturnType<typeof decimalMarkOf>): Row {
  const cell = (role: Role) => cells[roles.indexOf(role)]?.trim() ?? '';
  const asWritten: Row = { line, description: '', number: '', quantity: '1', price: undefined, total: undefined };
  const number = cell('number');
  const description = cell('description') || number;
  const quantity = cell('quantity') === '' ? '1' : quantityOf(cell('quantity'), mark);
  const total = figureOf(cell('total'), mark);
  const count = quantity === undefined ? undefined : figureOf(quantity.split(' ')[0] as string, 'point');
  const written = figureOf(cell('price'), mark);
  const price = written ?? (roles.includes('price') || count === undefined || count.isZero() ? undefined : exactly(total?.div(count)));
  if (description === '' || SUMS.test(description) || quantity === undefined || price === undefined || (cell('price') !== '' && written === undefined)) return asWritten;
  // A total that can't be read must not be lost.
  return { line, description, number: number === description ? '' : number, quantity, price, total: total ?? (cell('total') === '' ? undefined : cell('total')) };
}

/** A price made from a total, where it comes out even. */
function exactly(price: ReturnType<typeof figureOf>): ReturnType<typeof figureOf> {
  return price !== undefined && price.decimalPlaces() <= 4 ? price : undefined;
}
