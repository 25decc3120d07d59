import type { QuotePicture } from './types.js';

/** A text that came from outside, or a figure: it may read in another direction and is set apart from the words around it. */
export interface Own {
  readonly own: string;
}

/** A sentence or a cell. Words are the product's own; all else is Own. */
export type Said = readonly (string | Own)[];

/** A quote in words: what every form of it says, in the order in which it says it. */
export interface Sheet {
  /** BCP 47: of the words. */
  readonly language: string;
  readonly shop: { readonly name: string; readonly lines: readonly string[] };
  readonly heading: string;
  readonly title: string;
  readonly facts: readonly Fact[];
  readonly proposal: { readonly label: string; readonly title: string; readonly facts: readonly Fact[] };
  readonly sections: readonly Section[];
}

export interface Fact {
  readonly label: string;
  readonly says: Said;
}

export interface Section {
  readonly key: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

export type Block =
  | { readonly kind: 'words'; readonly says: Said }
  | { readonly kind: 'list'; readonly items: readonly Said[] }
  | { readonly kind: 'findings'; readonly items: readonly FindingSaid[] }
  | { readonly kind: 'bill'; readonly groups: readonly BillGroup[]; readonly total: { readonly label: string; readonly amount: string } }
  | { readonly kind: 'table'; readonly heads: readonly Head[]; readonly rows: readonly { readonly cells: readonly Said[]; readonly isMarked: boolean }[] }
  | { readonly kind: 'form'; readonly blanks: readonly Blank[] };

export interface FindingSaid {
  readonly says: Said;
  readonly details: readonly Said[];
  readonly pictures: readonly QuotePicture[];
}

export interface BillGroup {
  readonly key: string;
  readonly title: string;
  /** What it is, for someone who knows nothing of engines. */
  readonly says: Said;
  readonly lines: readonly BillLine[];
  readonly hours: string | undefined;
  readonly amount: string;
}

export interface BillLine {
  readonly title: string;
  readonly detail: Said;
  readonly hours: string | undefined;
  readonly amount: string;
}

export interface Head {
  readonly text: string;
  readonly align: 'words' | 'figures';
}

/** Room to write by hand, or something to tick. */
export type Blank = { readonly kind: 'line'; readonly label: string } | { readonly kind: 'choice'; readonly label: string; readonly of: readonly string[] };

export const own = (text: string): Own => ({ own: text });

/** A sentence with figures and texts from outside set apart. */
export function say(words: TemplateStringsArray, ...owned: readonly string[]): Said {
  return words.flatMap((part, i) => [...(part === '' ? [] : [part]), ...(i < owned.length ? [own(owned[i] as string)] : [])]);
}

export function joined(parts: readonly Said[], between: string): Said {
  return parts.flatMap((part, i) => (i === 0 ? part : [between, ...part]));
}
