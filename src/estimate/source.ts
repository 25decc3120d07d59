import type { Span } from '../language/index.js';
import type { Record } from '../vocabulary/index.js';

/** Where an entity was written. Every figure of the calculations leads back to one of these. */
export interface Source {
  readonly record: Record;
  /** The head of the line. */
  readonly at: Span;
  /** True where part of the line could not be read: what is priced from it may be incomplete. */
  readonly broken: boolean;
}

/** The title, or the name where the title can't be read: the line is known by it all the same. */
export function titleOf({ title, name }: Record): string | undefined {
  return title?.text ?? name?.name;
}

export function sourceOf(record: Record): Source {
  return { record, at: record.at, broken: record.broken };
}
