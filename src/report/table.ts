/** One row of a text table; a rule draws a line across the figures. */
export type Row = { readonly cells: readonly string[] } | 'rule' | 'gap';

/** Lays out rows in columns: words (the first, where nothing is said) to the left, figures to the right, two spaces between. */
export function layOut(rows: readonly Row[], left: readonly number[] = [0]): string[] {
  const widths: number[] = [];
  for (const row of rows) if (typeof row !== 'string') row.cells.forEach((cell, i) => (widths[i] = Math.max(widths[i] ?? 0, widthOf(cell))));
  return rows.map((row) => {
    if (row === 'gap') return '';
    const cells = row === 'rule' ? widths.map((width, i) => (i === 0 ? '' : '─'.repeat(width))) : row.cells;
    return widths.map((width, i) => pad(cells[i] ?? '', width, left.includes(i))).join('  ').trimEnd();
  });
}

/** Columns that a text takes in a terminal: wide East Asian letters and emoji two, combining marks none. */
export function widthOf(text: string): number {
  let width = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    if (/\p{Mark}/u.test(character)) continue;
    width += (code >= 0x1100 && code <= 0x115f) || (code >= 0x2e80 && code <= 0xa4cf) || (code >= 0xac00 && code <= 0xd7a3) || (code >= 0xf900 && code <= 0xfaff) || (code >= 0xff00 && code <= 0xff60) || code >= 0x1f300 ? 2 : 1;
  }
  return width;
}

function pad(text: string, width: number, left: boolean): string {
  const space = ' '.repeat(Math.max(0, width - widthOf(text)));
  return left ? text + space : space + text;
}

/** A title short enough for a column; a longer one ends in an ellipsis. */
export function shortened(title: string): string {
  const letters = [...title.replace(/\s+/g, ' ')];
  return letters.length > LONGEST ? `${letters.slice(0, LONGEST - 1).join('')}…` : letters.join('');
}

const LONGEST = 64;

/** Breaks a sentence into lines of at most so many columns; a longer word stands alone. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+(?!%)/).filter((one) => one !== '')) {
    if (line !== '' && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '') lines.push(line);
  return lines;
}
