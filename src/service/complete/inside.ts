import type { Token } from '../../language/index.js';

/** The inside of the quotes of a text, where an offset of its block is in there. */
export function insideOf(text: Token, local: number): { readonly start: number; readonly end: number } | undefined {
  const end = text.open === true ? text.end : text.end - 1;
  return text.kind === 'text' && local > text.start && local <= end ? { start: text.start + 1, end } : undefined;
}
