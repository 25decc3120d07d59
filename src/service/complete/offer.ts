import type { Completion } from '../feature-types.js';

/** Something that could be written, before it is tried on the line. */
export interface Offer {
  readonly label: string;
  readonly kind: Completion['kind'];
  readonly detail: string | undefined;
  readonly says: string | undefined;
  /** Forms of it; the first that the line can be read with is offered. Snippets, with escapes and tab stops. */
  readonly texts: readonly string[];
  /** True where it names a line, and the estimate has none that it could name yet. */
  readonly waits?: boolean;
  /** What is replaced, where that is not the word under the cursor; offsets within the block. */
  readonly word?: { readonly start: number; readonly end: number };
}
