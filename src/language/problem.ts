import type { Fix, Message, Problem, Severity, Span } from './tree.js';

/** The four families of checks, in the order of the manual. */
export type Family = 'shape' | 'names' | 'job' | 'money';

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
  /** What the manual says besides, such as where alone it can be told. */
  readonly besides?: string;
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
