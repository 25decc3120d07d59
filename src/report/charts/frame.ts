import { html, type Html } from '../page/html.js';

/** `narrow` is for a page of 400 px, `wide` for one that has room; the page shows one of them. */
export type Layout = 'narrow' | 'wide';

/** What a chart needs to know of its place. */
export interface Frame {
  /** Begins every id of the chart; two charts of a page must not share one. */
  readonly prefix: string;
  readonly layout: Layout;
}

/** Widths in units of the drawing; at the page's usual type size a unit is one pixel. */
export const WIDTHS: Readonly<Record<Layout, number>> = { narrow: 360, wide: 640 };

/** What a chart is, in words and as a drawing. */
export interface Drawn {
  /** Names the chart for the style sheet: `costs`, `ways` and so on. */
  readonly kind: string;
  readonly height: number;
  /** What is shown, in a few words. */
  readonly says: string;
  /** What it shows of it, in sentences with the numbers. */
  readonly tells: string;
  readonly inside: readonly (Html | undefined)[];
}

/** A chart as one image with a name and a description for those who do not see it. */
export function chart(frame: Frame, { kind, height, says, tells, inside }: Drawn): Html {
  const width = WIDTHS[frame.layout];
  const [name, more] = [idIn(frame, 'title'), idIn(frame, 'desc')];
  return html`<svg class="chart ${kind} chart-${frame.layout}" viewBox="0 0 ${width} ${rounded(height)}" width="${width}" height="${rounded(height)}" role="img" aria-labelledby="${name} ${more}">
<title id="${name}">${says}</title><desc id="${more}">${tells === '' ? 'Nothing to show.' : tells}</desc>
${inside.flatMap((piece) => piece ?? [])}
</svg>`;
}

/** An id of the page that only this chart has. Ids in lists are parted by blanks, so a prefix has none. */
export function idIn({ prefix, layout }: Frame, name: string): string {
  return `${prefix.replace(/[^A-Za-z0-9-]/gu, (character) => `_${(character.codePointAt(0) as number).toString(16)}_`)}-${layout}-${name}`;
}

/** A coordinate to two decimals, so that the same numbers give the same bytes. */
export function rounded(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

/** A rectangle between two edges. Both edges are rounded, not the width, so that what touches goes on touching. `pattern` is the id of one. */
export function bar(from: number, to: number, y: number, height: number, look: string, pattern?: string): Html {
  const [left, right] = [rounded(from), rounded(to)];
  const fill = pattern === undefined ? undefined : html` fill="url(#${pattern})"`;
  return html`<rect class="${look}" x="${left}" y="${rounded(y)}" width="${rounded(Math.max(0, right - left))}" height="${rounded(height)}"${fill}/>`;
}

export function line(x1: number, y1: number, x2: number, y2: number, look: string): Html {
  return html`<line class="${look}" x1="${rounded(x1)}" y1="${rounded(y1)}" x2="${rounded(x2)}" y2="${rounded(y2)}"/>`;
}

/** A text by itself, so that one which reads from right to left turns nothing else round. */
export function says(x: number, y: number, text: string | Html, look = '', anchor: 'start' | 'middle' | 'end' = 'start'): Html {
  return html`<text class="${look}" x="${rounded(x)}" y="${rounded(y)}"${anchor === 'start' ? undefined : html` text-anchor="${anchor}"`}>${text}</text>`;
}
