import { html, type Html } from '../page/html.js';
import { says, WIDTHS, type Frame } from './frame.js';
import { SIZES, widthOf } from './fit.js';

/** One entry: a sample of what is drawn, on a field of SAMPLE by 9 whose top left corner is given, and its name. */
export interface Entry {
  readonly name: string;
  readonly sample: (x: number, y: number) => Html;
}

export const SAMPLE = 16;
const ROW = 17;

/** The names of what is drawn, in rows that fit; and how high they are. */
export function legend({ layout }: Frame, y: number, entries: readonly Entry[]): { readonly drawn: Html; readonly height: number } {
  let [x, row] = [0, 0];
  const drawn = entries.map(({ name, sample }) => {
    const width = SAMPLE + 6 + widthOf(name, SIZES.small);
    if (x > 0 && x + width > WIDTHS[layout]) [x, row] = [0, row + 1];
    const at = { x, y: y + row * ROW };
    x += width + 14;
    return html`${sample(at.x, at.y)}${says(at.x + SAMPLE + 6, at.y + 8.5, name, 'small')}`;
  });
  return { drawn: html`<g class="legend">${drawn}</g>`, height: entries.length === 0 ? 0 : (row + 1) * ROW };
}
