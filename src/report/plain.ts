/**
 * Text from a file, safe to print: control characters, which a terminal would obey, and marks that turn the reading
 * order round are shown as their code.
 */
export function plain(text: string): string {
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/g, (character) => `‹U+${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}›`);
}
