import { hidden } from '../language/index.js';

const HIDDEN = new RegExp(hidden.source, 'gu');
/** A line of output holds no tab and no line end of a file either. */
const SHOWN = new RegExp(`[\\t\\n]|${hidden.source}`, 'gu');

/**
 * Text from a file, safe to print: control characters, which a terminal would obey, marks that turn the reading order
 * round, and whatever else can't be seen are shown as their code.
 */
export function plain(text: string): string {
  return text.replace(SHOWN, codeOf);
}

/** The same for a text of several lines: its tabs and line ends stay. */
export function visible(text: string): string {
  return text.replace(HIDDEN, codeOf);
}

function codeOf(character: string): string {
  return `‹U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}›`;
}
