/** What editor and page say to each other, and the guards by which each drops whatever else may arrive. */

/** The editor has a comparison to show. `estimate` says of which file; `markup` is the inside of the page. */
export interface Show {
  readonly kind: 'show';
  readonly estimate: string;
  readonly markup: string;
  /** What the page keeps for the editor over a restart of the window. */
  readonly kept: Kept;
}

/** Rows that are unfolded, and figures that are tried: the editor's to read, the page's to keep. */
export interface Kept {
  readonly unfolded: readonly string[];
  readonly tried: readonly TriedFigure[];
}

/** A figure that is tried, by the line that it is written on. */
export interface TriedFigure {
  readonly id: string;
  readonly names: string;
  readonly value: string;
  readonly uri: string;
  readonly line: string;
  readonly nth: number;
  readonly column: number;
  readonly length: number;
}

/** The rows that come from the line under the cursor. */
export interface Here {
  readonly kind: 'here';
  readonly estimate: string;
  readonly rows: readonly string[];
}

/** What takes longer to work out than the comparison, for the places that the page keeps for it. */
export interface Later {
  readonly kind: 'later';
  readonly estimate: string;
  readonly markup: string;
}

/** A figure is to be brought into view. */
export interface Seek {
  readonly kind: 'seek';
  readonly estimate: string;
  readonly figure: string;
}

/** The page is loaded, or loaded again, and waits for something to show. */
export interface Ready {
  readonly kind: 'ready';
}

/** A figure was chosen; the editor knows which line it comes from. */
export interface Go {
  readonly kind: 'go';
  readonly estimate: string;
  readonly figure: string;
}

/** A row is to be unfolded into how its figures were made, or folded again. */
export interface Unfold {
  readonly kind: 'unfold' | 'fold';
  readonly estimate: string;
  readonly row: string;
}

/** Another value is tried for a figure. */
export interface Try {
  readonly kind: 'try';
  readonly estimate: string;
  readonly figure: string;
  readonly value: string;
}

/** What is tried is to be written into the file, or to be given up. */
export interface Settle {
  readonly kind: 'write' | 'back';
  readonly estimate: string;
}

export type ToPage = Show | Later | Seek | Here;
export type ToEditor = Ready | Go | Unfold | Try | Settle;

/** What the editor keeps of a page that is hidden or closed with the window. Anything more can be made again. */
export interface PageState extends Kept {
  readonly estimate: string;
  readonly scroll: number;
  /** Keys of the lists that are folded open. */
  readonly open: readonly string[];
}

/** No address or figure is longer; a longer text is not from this program. */
const LONGEST = 4_000;
const MOST_LISTS = 1_000;
const MOST_ROWS = 10_000;
/** Digits, and a point before the decimals; what the editor takes for a figure. */
export const FIGURE = /^\d{1,12}(?:\.\d{1,6})?$/;

export function readToPage(data: unknown): ToPage | undefined {
  if (!isRecord(data)) return undefined;
  const { kind, estimate, markup, figure, rows, kept } = data;
  if (!isShort(estimate)) return undefined;
  if (kind === 'seek') return hasOnly(data, 3) && isShort(figure) ? { kind, estimate, figure } : undefined;
  if (kind === 'here') return hasOnly(data, 3) && isShortList(rows, MOST_ROWS) ? { kind, estimate, rows } : undefined;
  if (kind === 'later') return hasOnly(data, 3) && typeof markup === 'string' ? { kind, estimate, markup } : undefined;
  const keeps = readKept(kept);
  return kind === 'show' && hasOnly(data, 4) && typeof markup === 'string' && keeps !== undefined ? { kind, estimate, markup, kept: keeps } : undefined;
}

export function readToEditor(data: unknown): ToEditor | undefined {
  if (!isRecord(data)) return undefined;
  if (data['kind'] === 'ready') return hasOnly(data, 1) ? { kind: 'ready' } : undefined;
  const { kind, estimate, figure, row, value } = data;
  if (!isShort(estimate)) return undefined;
  if (kind === 'write' || kind === 'back') return hasOnly(data, 2) ? { kind, estimate } : undefined;
  if (kind === 'try') return hasOnly(data, 4) && isShort(figure) && isFigure(value) ? { kind, estimate, figure, value } : undefined;
  if (kind === 'unfold' || kind === 'fold') return hasOnly(data, 3) && isShort(row) ? { kind, estimate, row } : undefined;
  return kind === 'go' && hasOnly(data, 3) && isShort(figure) ? { kind, estimate, figure } : undefined;
}

export function readPageState(data: unknown): PageState | undefined {
  if (!isRecord(data)) return undefined;
  const { estimate, scroll, open } = data;
  const kept = readKept({ unfolded: data['unfolded'], tried: data['tried'] });
  if (kept === undefined || !isShort(estimate) || typeof scroll !== 'number' || !Number.isFinite(scroll) || scroll < 0) return undefined;
  return isShortList(open, MOST_LISTS) ? { estimate, scroll, open, ...kept } : undefined;
}

function readKept(data: unknown): Kept | undefined {
  if (!isRecord(data) || !hasOnly(data, 2)) return undefined;
  const { unfolded, tried } = data;
  if (!isShortList(unfolded, MOST_LISTS) || !Array.isArray(tried) || tried.length > MOST_LISTS) return undefined;
  const read = tried.map(readTried);
  return read.some((one) => one === undefined) ? undefined : { unfolded, tried: read.flatMap((one) => one ?? []) };
}

function readTried(data: unknown): TriedFigure | undefined {
  if (!isRecord(data) || !hasOnly(data, 8)) return undefined;
  const { id, names, value, uri, line, nth, column, length } = data;
  if (!isShort(id) || !isShort(names) || !isFigure(value) || !isShort(uri) || !isShort(line)) return undefined;
  return isCount(nth) && isCount(column) && isCount(length) ? { id, names, value, uri, line, nth, column, length } : undefined;
}

function isFigure(value: unknown): value is string {
  return typeof value === 'string' && FIGURE.test(value);
}

function isCount(value: unknown): value is number {
  return Number.isInteger(value) && (value as number) >= 0;
}

function isShortList(value: unknown, most: number): value is string[] {
  return Array.isArray(value) && value.length <= most && value.every(isShort);
}

function isRecord(data: unknown): data is Record<string, unknown> {
  return typeof data === 'object' && data !== null && !Array.isArray(data);
}

function hasOnly(data: object, count: number): boolean {
  return Object.keys(data).length === count;
}

function isShort(value: unknown): value is string {
  return typeof value === 'string' && value.length > 0 && value.length <= LONGEST;
}
