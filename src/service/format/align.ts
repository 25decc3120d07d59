import type { Cells } from './cells.js';

const STEP = '  ';

/**
 * Writes a run of neighbouring lines with their columns aligned. Heads of all lines make one column; names, titles,
 * first figures, and what follows these behind one and the same word, make columns among the lines of one head.
 */
export function alignRun(lines: readonly Cells[]): string[] {
  const byHead = new Map<string, Cells[]>();
  for (const line of lines) {
    const alike = byHead.get(line.head);
    if (alike === undefined) byHead.set(line.head, [line]);
    else alike.push(line);
  }
  const columns = new Map([...byHead].map(([head, alike]) => [head, columnsOf(alike)]));
  const headWidth = byHead.size === 1 ? (lines[0]?.head.length ?? 0) : widest(lines, (line) => line.head) + 1;
  return withComments(lines, lines.map((line) => textOf(line, headWidth, columns.get(line.head) as Columns)));
}

/** The widths that lines of one head share. */
interface Columns {
  readonly name: number;
  readonly title: number;
  /** Digits before the point of their first figures, where these are to stand below each other. */
  readonly whole: number | undefined;
  /** Width of the first slots that another follows, where these others are to stand below each other. */
  readonly first: number;
}

function columnsOf(alike: readonly Cells[]): Columns {
  const [only, ...more] = alike;
  if (only !== undefined && more.length === 0) return { name: only.name?.length ?? 0, title: only.title?.length ?? 0, whole: undefined, first: 0 };
  const figures = alike.map((line) => figureIn(line.slots[0]));
  const first = figures[0];
  const comparable = first !== undefined && figures.every((figure) => figure?.before === first.before);
  const whole = comparable ? figures.reduce((most, figure) => Math.max(most, figure?.whole.length ?? 0), 0) : undefined;
  const followed = alike.filter(({ slots }) => slots.length > 1);
  const sameWord = new Set(followed.map(({ slots }) => firstWord(slots[1] as string))).size === 1;
  return {
    name: widest(alike, (line) => line.name ?? ''),
    title: widest(alike, (line) => line.title ?? ''),
    whole,
    first: sameWord ? widest(followed, ({ slots }) => figureMoved(slots[0] as string, whole)) : 0,
  };
}

function textOf(line: Cells, headWidth: number, { name, title, whole, first }: Columns): string {
  const lead = [line.head.padEnd(headWidth)];
  if (name > 0) lead.push((line.name ?? '').padEnd(name));
  if (title > 0) lead.push((line.title ?? '').padEnd(title));
  const slots = line.slots.map((slot, i) => (i > 0 ? slot : figureMoved(slot, whole).padEnd(line.slots.length > 1 ? first : 0))).join(STEP);
  const start = `${STEP.repeat(line.indent)}${lead.join(' ')}`;
  return slots === '' ? start.replace(/(?<! ) +$/, '') : `${start}${title > 0 ? STEP : ' '}${slots}`;
}

/** Moves a first figure so that its point stands below the others'. */
function figureMoved(slot: string, whole: number | undefined): string {
  const own = whole === undefined ? undefined : figureIn(slot);
  return own === undefined ? slot : `${own.before}${own.whole.padStart(whole ?? 0)}${own.after}`;
}

function firstWord(slot: string): string {
  return slot.slice(0, `${slot} `.indexOf(' '));
}

/** The figure that a slot starts with, behind the same word in all lines or none: `7.5 h`, `cost 88.00`. */
function figureIn(slot: string | undefined): { readonly before: string; readonly whole: string; readonly after: string } | undefined {
  const found = /^((?:[a-z-]+ )*)(\d+)(\D.*|)$/.exec(slot ?? '');
  // A date is not a figure.
  if (found === null || /^-\d/.test(found[3] ?? '')) return undefined;
  return { before: found[1] ?? '', whole: found[2] ?? '', after: found[3] ?? '' };
}

/** Comments behind lines stand in one column for a run of lines that have them. */
function withComments(lines: readonly Cells[], texts: readonly string[]): string[] {
  const out = [...texts];
  for (let from = 0; from < lines.length;) {
    let to = from;
    while (lines[to]?.comment !== undefined) to++;
    const column = Math.max(0, ...texts.slice(from, to).map((text) => text.length));
    for (let i = from; i < to; i++) out[i] = `${(texts[i] as string).padEnd(column)}${STEP}${lines[i]?.comment ?? ''}`;
    from = to + 1;
  }
  return out;
}

function widest(lines: readonly Cells[], cell: (line: Cells) => string): number {
  return lines.reduce((most, line) => Math.max(most, cell(line).length), 0);
}
