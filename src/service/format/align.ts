import type { Cells } from './cells.js';

const STEP = '  ';

/** Writes a run of neighbouring lines with their columns aligned; see the manual's page on formatting. */
export function alignRun(lines: readonly Cells[]): string[] {
  const oneHead = new Set(lines.map((line) => line.head)).size === 1;
  const headWidth = widest(lines, (line) => line.head);
  const texts = lines.map((line) => {
    const alike = lines.filter((other) => other.head === line.head);
    const columns = [line.head.padEnd(oneHead ? line.head.length : headWidth + 1)];
    const nameWidth = widest(alike, (other) => other.name ?? '');
    const titleWidth = widest(alike, (other) => other.title ?? '');
    if (nameWidth > 0) columns.push((line.name ?? '').padEnd(nameWidth));
    if (titleWidth > 0) columns.push((line.title ?? '').padEnd(titleWidth));
    const lead = columns.join(' ');
    const gap = titleWidth > 0 ? STEP : ' ';
    const slots = figuresAligned(line, alike).join(STEP);
    return `${STEP.repeat(line.indent)}${slots === '' ? lead.trimEnd() : `${lead}${gap}${slots}`}`;
  });
  return withComments(lines, texts);
}

/** First slots that start with a figure, or with the same word and a figure, are moved so that points stand below each other. */
function figuresAligned(line: Cells, alike: readonly Cells[]): readonly string[] {
  const own = figureIn(line.slots[0]);
  const others = alike.map((other) => figureIn(other.slots[0]));
  if (own === undefined || others.some((other) => other === undefined || other.before !== own.before)) return line.slots;
  const width = Math.max(...others.map((other) => other?.whole.length ?? 0));
  return [`${own.before}${own.whole.padStart(width)}${own.after}`, ...line.slots.slice(1)];
}

function figureIn(slot: string | undefined): { readonly before: string; readonly whole: string; readonly after: string } | undefined {
  const found = /^((?:[a-z-]+ )*)(\d+)(\D.*|)$/.exec(slot ?? '');
  // A date is not a figure, nor are three figures, which have no one column.
  if (found === null || /^-\d/.test(found[3] ?? '')) return undefined;
  return { before: found[1] ?? '', whole: found[2] ?? '', after: found[3] ?? '' };
}

/** Comments behind lines stand in one column for a run of lines that have them. */
function withComments(lines: readonly Cells[], texts: readonly string[]): string[] {
  return texts.map((text, i) => {
    const comment = lines[i]?.comment;
    if (comment === undefined) return text;
    let from = i;
    let to = i;
    while (lines[from - 1]?.comment !== undefined) from--;
    while (lines[to + 1]?.comment !== undefined) to++;
    const column = Math.max(...texts.slice(from, to + 1).map((one) => one.length));
    return `${text.padEnd(column)}${STEP}${comment}`;
  });
}

function widest(lines: readonly Cells[], cell: (line: Cells) => string): number {
  return Math.max(0, ...lines.map((line) => cell(line).length));
}
