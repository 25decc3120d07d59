import { problem, type Block, type Problem, type Rule, type Span, type Statement, type Token } from '../language/index.js';

/** Walks the tokens of one line after the other. Everything read from a line is read through one of these. */
export class Cursor {
  private at = 0;
  private tokens: readonly Token[] = [];

  constructor(
    readonly block: Block,
    private readonly problems: Problem[],
  ) {}

  /** Goes to a token of a line, by its number from 0. */
  enter({ tokens }: Pick<Statement, 'tokens'>, at: number): void {
    this.tokens = tokens;
    this.at = at;
  }

  peek(ahead = 0): Token | undefined {
    return this.tokens[this.at + ahead];
  }

  take(): Token | undefined {
    return this.tokens[this.at++];
  }

  /** True, and moved on, where the next token is this mark or word. */
  takeIf(text: string): boolean {
    const token = this.tokens[this.at];
    if (token === undefined || token.text !== text || token.kind === 'text') return false;
    this.at++;
    return true;
  }

  span(from: Token, to: Token = from): Span {
    return { block: this.block, start: from.start, end: to.end };
  }

  /** The place just read; used where something is missing after it. */
  lastSpan(): Span {
    const last = this.tokens[Math.max(0, Math.min(this.at, this.tokens.length) - 1)] as Token;
    return this.span(last);
  }

  /** The place to complain about: the next token, or else the last one. */
  hereSpan(): Span {
    const next = this.peek();
    return next === undefined ? this.lastSpan() : this.span(next);
  }

  /** True where the rest of the line already has a message from the language room. */
  isSpoiled(token: Token): boolean {
    return token.kind === 'strange';
  }

  /** Writes down a problem, but not about a run, or for want of one, that already has a message of the language room. */
  report<D>(rule: Rule<D>, at: Span, data: D): undefined {
    const next = this.peek();
    const spoiled = this.tokens.find((token) => this.isSpoiled(token));
    const told = spoiled !== undefined && (spoiled === next || (spoiled.start < at.end && at.start < spoiled.end));
    if (!told) this.problems.push(problem(rule, at, data));
    return undefined;
  }
}
