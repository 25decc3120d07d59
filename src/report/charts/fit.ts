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
  if (/[ftr-]/.test(character)) return 0.44;
  if (/[0-9]/.test(character)) return 0.64;
  if (/[mwMW—…%]/.test(character)) return 0.92;
  if (/[A-Z]/.test(character)) return 0.69;
  if (/[&<>=+±×÷~^#@]/.test(character)) return 0.84;
  // From here on scripts are written in squares.
  return character >= '\u1100' ? 1 : 0.59;
}

/** How much wider a text is in strong type. */
export const STRONG = 1.16;

/** Where a text is cut: at its end, or inside where its end tells it from others. */
export type Cut = 'end' | 'inside';

/** A text cut to a width, with its whole in a title where something is missing. */
export function fitted(text: string, width: number, size: number = SIZES.text, cut: Cut = 'end'): Html {
  const whole = plain(text);
  const short = shortened(whole, width, size, cut);
  return short === whole ? html`${whole}` : html`<title>${whole}</title>${short}`;
}

/** How much of a text that is cut inside stands before the cut. */
const BEFORE = 0.62;

/** A text that fits a width, with a mark where it was cut; never half a character. */
export function shortened(text: string, width: number, size: number, cut: Cut): string {
  if (widthOf(text, size) <= width) return text;
  const room = width - widthOf('…', size);
  const characters = [...text];
  if (cut === 'end') return `${taken(characters, room, size).trimEnd()}…`;
  const before = taken(characters, room * BEFORE, size);
  const after = [...taken(characters.reverse(), room - widthOf(before, size), size)].reverse().join('');
  return `${before.trimEnd()}…${after.trimStart()}`;
}

function taken(characters: readonly string[], width: number, size: number): string {
  let [room, kept] = [width, ''];
  for (const character of characters) {
    room -= widthOf(character, size);
    if (room < 0) break;
    kept += character;
  }
  return kept;
}
