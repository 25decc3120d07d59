/** Text to a lossless tree and back. Knows statements, not engines. Never throws. */
export type { Token } from './token.js';
export type { Block, Comment, Range, Span, Statement, Tree } from './tree.js';
export { releaseTokens } from './line.js';
export { heldByBlocks, spanOfStatement, statementsOf } from './tree.js';
export type { Fix, Message, Problem, Severity } from './tree.js';
export type { Rule } from './problem.js';
export { problem, sentence } from './problem.js';
export { parse, parseSome, print, rangeIn, reparse } from './parse.js';
export { exact } from './exact.js';
export { sameItems } from './same-items.js';
export { changedSince } from './changed-since.js';
export { LastTime, type Changes } from './last-time.js';
export { Places } from './places.js';
export { Holders, Slot, type Holder } from './slot.js';
export { limits } from './limits.js';
export { hidden, plainForm } from './look-alikes.js';
export * as syntaxRules from './syntax-rules.js';
