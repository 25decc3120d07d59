/** The line that gives estimates to the driver of that name. */
export const ATTRIBUTE = '*.yard diff=steelyard';

/** The mark of UTF-8, as its bytes stand in a text read byte by byte. */
const MARK = '\u00ef\u00bb\u00bf';

/**
 * A .gitattributes with the line. It goes first: what others wrote still has the last word, and not a byte of it
 * changes. Texts are read byte by byte (latin1), so that whatever is in them stays.
 */
export function withAttribute(text: string): string {
  if (hasAttribute(text)) return text;
  const mark = text.startsWith(MARK) ? MARK : '';
  return `${mark}${ATTRIBUTE}${text.includes('\r\n') ? '\r\n' : '\n'}${text.slice(mark.length)}`;
}

/** A .gitattributes without the line, wherever it stands. */
export function withoutAttribute(text: string): string {
  const mark = text.startsWith(MARK) ? MARK : '';
  return mark + linesOf(text.slice(mark.length)).filter((line) => line.trim() !== ATTRIBUTE).join('');
}

function hasAttribute(text: string): boolean {
  return withoutAttribute(text) !== text;
}

/** Lines with their ends. */
function linesOf(text: string): string[] {
  return text.split(/(?<=\n)/);
}
