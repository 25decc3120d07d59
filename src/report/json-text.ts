import { hidden } from '../language/index.js';

const HIDDEN = new RegExp(hidden.source, 'gu');

/**
 * Data as JSON, a field a line. What nobody sees is written as its code (RFC 8259, section 7): it is the same text to
 * whoever reads the JSON, and nothing that a terminal would obey to whoever looks at it.
 */
export function jsonText(data: unknown): string {
  return `${JSON.stringify(data, null, 2).replace(HIDDEN, (character) => [...Array(character.length).keys()].map((i) => `\\u${character.charCodeAt(i).toString(16).padStart(4, '0')}`).join(''))}\n`;
}
