/** What a run of characters is. The language room knows shapes, never meanings: `64.30` is a number, not a price. */
export type TokenKind =
  | 'word' // rear-head, labour, USD
  | 'text' // "Rear head"
  | 'number' // 7.5, 12, 64.30
  | 'date' // 2026-11-24, 2012-11
  | 'mark' // , / %
  | 'mixed' // starts like a number and goes on as something else: 7.5h, 1,200, -4, a VIN
  | 'strange'; // characters that no estimate needs: “, €, Cyrillic а, an emoji

/** One token. Offsets count UTF-16 units from the start of the block that holds the token. */
export interface Token {
  readonly kind: TokenKind;
  readonly start: number;
  readonly end: number;
  /** As written; for `text` without its quotes and with `\"` and `\\` undone. */
  readonly text: string;
  /** Set on a text whose closing quote is missing: it has swallowed the rest of the line. */
  readonly open?: true;
}
