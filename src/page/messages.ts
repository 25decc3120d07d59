/** What editor and page say to each other, and the guards by which each drops whatever else may arrive. */

/** The editor has a comparison to show. `estimate` says of which file; `markup` is the inside of the page. */
export interface Show {
  readonly kind: 'show';
  readonly estimate: string;
  readonly markup: string;
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

export type ToPage = Show | Later | Seek;
export type ToEditor = Ready | Go | Try | Settle;

/** What the editor keeps of a page that is hidden or closed with the window. Anything more can be made again. */
export interface PageState {
  readonly estimate: string;
  readonly scroll: number;
  /** Keys of the lists that are folded open. */
  readonly open: readonly string[];
}

/** No address or figure is longer; a longer text is not from this program. */
const LONGEST = 4_000;
const MOST_LISTS = 1_000;
/** Digits, and a point before the decimals; what the editor takes for a figure. */
export const FIGURE = /^\d{1,12}(?:\.\d{1,6})?$/;

export function readToPage(data: unknown): ToPage | undefined {
  if (!isRecord(data) || !hasOnly(data, 3)) return undefined;
  const { kind, estimate, markup, figure } = data;
  if (!isShort(estimate)) return undefined;
  if (kind === 'seek') return isShort(figure) ? { kind, estimate, figure } : undefined;
  return (kind === 'show' || kind === 'later') && typeof markup === 'string' ? { kind, estimate, markup } : undefined;
}

export function readToEditor(data: unknown): ToEditor | undefined {
  if (!isRecord(data)) return undefined;
  if (data['kind'] === 'ready') return hasOnly(data, 1) ? { kind: 'ready' } : undefined;
  const { kind, estimate, figure, value } = data;
  if (!isShort(estimate)) return undefined;
  if (kind === 'write' || kind === 'back') return hasOnly(data, 2) ? { kind, estimate } : undefined;
  if (kind === 'try') return hasOnly(data, 4) && isShort(figure) && typeof value === 'string' && FIGURE.test(value) ? { kind, estimate, figure, value } : undefined;
  return kind === 'go' && hasOnly(data, 3) && isShort(figure) ? { kind, estimate, figure } : undefined;
}

export function readPageState(data: unknown): PageState | undefined {
  if (!isRecord(data)) return undefined;
  const { estimate, scroll, open } = data;
  if (!isShort(estimate) || typeof scroll !== 'number' || !Number.isFinite(scroll) || scroll < 0) return undefined;
  if (!Array.isArray(open) || open.length > MOST_LISTS || !open.every(isShort)) return undefined;
  return { estimate, scroll, open };
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
