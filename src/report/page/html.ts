import { plain } from '../plain.js';

/** A piece of a page. Only `html` makes one, so a text can't become markup by mistake. */
export interface Html {
  readonly markup: string;
}

export type Piece = Html | string | number | readonly Html[] | undefined;

/** Puts pieces into markup; everything that is not itself a piece of a page is escaped. */
export function html(markup: TemplateStringsArray, ...pieces: readonly Piece[]): Html {
  return { markup: markup.reduce((page, part, i) => page + part + (i < pieces.length ? markupOf(pieces[i]) : ''), '') };
}

function markupOf(piece: Piece): string {
  if (piece === undefined) return '';
  if (typeof piece === 'string') return escaped(piece);
  if (typeof piece === 'number') return String(piece);
  return 'markup' in piece ? piece.markup : piece.map((one) => one.markup).join('');
}

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** The one way by which text comes into a page, between tags and in quoted attributes alike. */
function escaped(text: string): string {
  return plain(text).replace(/[&<>"']/g, (character) => entities[character] as string);
}
