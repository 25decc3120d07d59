import type { Span } from './tree.js';

/**
 * How much a problem matters. `error`: the line can't be priced as written. `warning`: priced, but probably not
 * what was meant. `advice`: worth a look.
 */
export type Severity = 'error' | 'warning' | 'advice';

/** The four families of checks, in the order of the manual. */
export type Family = 'shape' | 'names' | 'job' | 'money';

/** What a problem says, always in three parts. */
export interface Message {
  /** What is wrong. */
  readonly what: string;
  /** Why it matters to the quote. */
  readonly why: string;
  /** What to write instead. */
  readonly instead: string;
}

/** A one-step edit that mends the problem. */
export interface Fix {
  readonly title: string;
  readonly at: Span;
  readonly text: string;
}

/** One kind of problem: a stable code, its words, and an example that shows it. */
export interface Rule<D> {
  readonly code: string;
  readonly family: Family;
  readonly severity: Severity;
  readonly title: string;
  readonly message: (data: D) => Message;
  readonly fix?: (data: D, at: Span) => Fix | undefined;
  /** A file that has this problem once, marked `«…»` at the exact range. */
  readonly example: string;
}

/** A problem found: which rule, where, and the facts its words are made of. */
export interface Problem {
  readonly code: string;
  readonly severity: Severity;
  readonly at: Span;
  readonly message: Message;
  readonly fix: Fix | undefined;
  /** Another place that the problem is about, such as the first of two lines with one name. */
  readonly related: { readonly at: Span; readonly says: string } | undefined;
}

/** Writes down a problem. Words are made at once: problems are few, and plain data is easier to pass on. */
export function problem<D>(rule: Rule<D>, at: Span, data: D, related?: Problem['related']): Problem {
  return {
    code: rule.code,
    severity: rule.severity,
    at,
    message: rule.message(data),
    fix: rule.fix?.(data, at),
    related,
  };
}

/** The three parts as one paragraph. */
export function sentence(message: Message): string {
  return [message.what, message.why, message.instead].filter((part) => part !== '').join(' ');
}
