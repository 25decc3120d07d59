import { html, type Html } from '../page/html.js';
import type { Layout } from './frame.js';

/** The numbers of a chart as rows; the first column says what a row is about. */
export interface Numbers {
  readonly caption: string;
  readonly head: readonly string[];
  /** How many of the last columns hold figures, which are aligned at their ends; the others hold words. */
  readonly figures: number;
  /** A row has as many texts as the head. */
  readonly rows: readonly (readonly string[])[];
}

/** The same numbers as a table, for those who do not see the chart and for all who want them exactly. */
export function tableOf({ caption, head, figures, rows }: Numbers): Html {
  const look = (column: number) => (column < head.length - figures ? html` class="words"` : undefined);
  const cells = ([first = '', ...others]: readonly string[]) => html`<th scope="row"><bdi>${first}</bdi></th>${others.map((text, i) => html`<td${look(i + 1)}><bdi>${text}</bdi></td>`)}`;
  return html`<table class="numbers"><caption>${caption}</caption>
<thead><tr>${head.map((text, i) => html`<th scope="col"${look(i)}><bdi>${text}</bdi></th>`)}</tr></thead>
<tbody>${rows.map((row) => html`<tr>${cells(row)}</tr>`)}</tbody></table>`;
}

/** A chart in both layouts, of which the style sheet shows one; for one whose numbers are in a table beside it anyway. */
export function chartAlone(key: string, draw: (layout: Layout) => Html): Html {
  return html`<div class="charted" data-key="${key}">${draw('narrow')}
${draw('wide')}</div>`;
}

/** The same with its numbers folded up below. */
export function chartWithNumbers(key: string, draw: (layout: Layout) => Html, numbers: Numbers): Html {
  return html`<div class="charted" data-key="${key}">${draw('narrow')}
${draw('wide')}
<details data-key="${key} numbers"><summary>In numbers</summary><div class="wide" role="region" aria-label="${numbers.caption}" tabindex="0">${tableOf(numbers)}</div></details></div>`;
}
