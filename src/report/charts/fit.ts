import { html, type Html } from '../page/html.js';
import { plain } from '../plain.js';

/** Text sizes of the charts, in units of the drawing; the style sheet has the same. */
export const SIZES = { text: 12, small: 11 } as const;

/**
 * About how wide a text is drawn. No font can be asked here; the widths are those of usual sans-serif faces, rather
 * too wide than too narrow.
 */
export function widthOf(text: string, size: number = SIZES.text): number {
  let width = 0;
  for (const character of text) width += emOf(character);
  return width * size;
}

function emOf(character: string): number {
  if (/[ .,:;'’|!ijl()[\]]/.test(character)) return 0.31;
  if (/[ftr1-]/.test(character)) return 0.45;
  if (/[mwMW—…%]/.test(character)) return 0.92;
  if (/[A-Z]/.test(character)) return 0.69;
  // From here on scripts are written in squares.
  return character >= '\u1100' ? 1 : 0.575;
}

/** A text cut to a width, with its whole in a title where something is missing. */
export function fitted(text: string, width: number, size: number = SIZES.text): Html {
  const whole = plain(text);
  const cut = shortened(whole, width, size);
  return cut === whole ? html`${whole}` : html`<title>${whole}</title>${cut}`;
}

/** The beginning of a text that fits a width, with a mark where it was cut; never half a character. */
export function shortened(text: string, width: number, size: number = SIZES.text): string {
  if (widthOf(text, size) <= width) return text;
  let room = width - widthOf('…', size);
  let kept = '';
  for (const character of text) {
    room -= widthOf(character, size);
    if (room < 0) break;
    kept += character;
  }
  return `${kept.trimEnd()}…`;
}
