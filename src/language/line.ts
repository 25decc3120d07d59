import { sharedLexer } from './lexer.js';
import type { Token } from './token.js';
import type { Block, Comment, Statement } from './tree.js';

const NOTHING_BELOW: readonly Statement[] = [];

/**
 * A statement that can let go of its tokens. They are read once when a line is first understood, and then only for the few
 * lines that somebody points at, while they would take a fifth of the memory of a long file: whoever asks again has them
 * made again.
 */
export class Line implements Statement {
  children = NOTHING_BELOW;

  /** `from` and `to` are where its tokens start and end in the block, a comment included. */
  constructor(
    readonly block: Block,
    private made: readonly Token[] | undefined,
    readonly comment: Comment | undefined,
    readonly indent: number,
    readonly line: number,
    private readonly from: number,
    private readonly to: number,
  ) {}

  get tokens(): readonly Token[] {
    return (this.made ??= sharedLexer().read(this.block.text, this.from, this.to, this.line));
  }

  release(): void {
    this.made = undefined;
    for (const one of this.children) if (one instanceof Line) one.release();
  }
}

/** Lets go of the tokens of a block that was read; they are made again for who asks. */
export function releaseTokens({ statements }: Block): void {
  for (const one of statements) if (one instanceof Line) one.release();
}
