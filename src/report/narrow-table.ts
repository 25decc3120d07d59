import { layOut, widthOf, wrap, type Row } from './table.js';

/** Words beside figures get no less than this, nor less than their longest one. */
const LEAST_WORDS = 20;

/**
 * Lays out options beside each other in no more than so many columns, every figure whole: the words to the left are
 * broken into lines first, and where that is not enough the options stand below each other, each group with the words.
 */
export function optionsWithin(width: number, rows: readonly Row[]): string[] {
  const whole = layOut(rows);
  if (isWithin(width, whole)) return whole;
  const least = leastOf(rows, 0);
  return groupsOf(rows, width - least).flatMap((columns, i) => [...(i === 0 ? [] : ['']), ...broken(width, only(rows, columns), 0, [0])]);
}

/** Lays out lines of a list likewise: the words of one column are broken, and where that is not enough the figures of a line stand below its words. */
export function listWithin(width: number, rows: readonly Row[], words: number, left: readonly number[]): string[] {
  const whole = layOut(rows, left);
  if (isWithin(width, whole)) return whole;
  const narrow = broken(width, rows, words, left);
  return isWithin(width, narrow) ? narrow : rows.flatMap((row) => (typeof row === 'string' ? [''] : stacked(width, row.cells, left)));
}

function isWithin(width: number, lines: readonly string[]): boolean {
  return lines.every((line) => widthOf(line) <= width);
}

function widestIn(rows: readonly Row[], column: number): number {
  return Math.max(0, ...rows.map((row) => (typeof row === 'string' ? 0 : widthOf(row.cells[column] ?? ''))));
}

/** The least that a column of words can be narrowed to. */
function leastOf(rows: readonly Row[], column: number): number {
  const words = rows.flatMap((row) => (typeof row === 'string' ? [] : wrap(row.cells[column] ?? '', 1).map((word) => widthOf(word) + SET_IN.length * 2)));
  return Math.min(widestIn(rows, column), Math.max(LEAST_WORDS, ...words));
}

/** The columns of figures that stand beside each other in so much room: as many as fit, and one at least. */
function groupsOf(rows: readonly Row[], room: number): number[][] {
  const count = Math.max(...rows.map((row) => (typeof row === 'string' ? 0 : row.cells.length)));
  const groups: number[][] = [];
  let left = 0;
  for (let column = 1; column < count; column++) {
    const takes = BETWEEN + widestIn(rows, column);
    const group = groups[groups.length - 1];
    if (group !== undefined && takes <= left) group.push(column);
    else {
      groups.push([column]);
      left = room;
    }
    left -= takes;
  }
  return groups;
}

/** Spaces between two columns. */
const BETWEEN = 2;

/** The rows with some columns of figures only; a row that has none in them is left away, and a gap that is one too many with it. */
function only(rows: readonly Row[], columns: readonly number[]): Row[] {
  const own = rows.flatMap((row): Row[] => {
    if (typeof row === 'string') return [row];
    const cells = columns.map((column) => row.cells[column] ?? '');
    return cells.every((cell) => cell === '') && row.cells.slice(1).some((cell) => cell !== '') ? [] : [{ cells: [row.cells[0] ?? '', ...cells] }];
  });
  return own.filter((row, i) => row !== 'gap' || (i > 0 && own[i + 1] !== undefined && own[i + 1] !== 'gap'));
}

/** The rows with one column of words as narrow as the others ask for. Figures stand on the first line of their words. */
function broken(width: number, rows: readonly Row[], words: number, left: readonly number[]): string[] {
  const others = [...new Set(rows.flatMap((row) => (typeof row === 'string' ? [] : row.cells.map((_, i) => i))))].filter((column) => column !== words);
  const room = Math.max(leastOf(rows, words), width - others.reduce((sum, column) => sum + BETWEEN + widestIn(rows, column), 0));
  return layOut(rows.flatMap((row): Row[] => {
    if (typeof row === 'string') return [row];
    const [first = '', ...more] = hanging(row.cells[words] ?? '', room);
    return [{ cells: row.cells.map((cell, i) => (i === words ? first : cell)) }, ...more.map((line) => ({ cells: row.cells.map((_, i) => (i === words ? line : '')) }))];
  }), left);
}

const SET_IN = '  ';

/** Words in lines of so many columns, those after the first set in. */
function hanging(text: string, room: number): string[] {
  if (widthOf(text) <= room) return [text];
  const before = /^ */.exec(text)?.[0] ?? '';
  return wrap(text, room - before.length - SET_IN.length).map((line, i) => `${before}${i === 0 ? '' : SET_IN}${line}`);
}

function stacked(width: number, cells: readonly string[], left: readonly number[]): string[] {
  const words = cells.filter((cell, i) => left.includes(i) && cell !== '').join(': ');
  const lines: string[] = [];
  for (const figure of cells.filter((cell, i) => !left.includes(i) && cell !== '')) {
    const beside = lines.length === 0 ? undefined : `${lines[lines.length - 1]}  ${figure}`;
    if (beside !== undefined && widthOf(beside) <= width) lines[lines.length - 1] = beside;
    else lines.push(`${SET_IN}${SET_IN}${figure}`);
  }
  return [...hanging(words, width), ...lines];
}
