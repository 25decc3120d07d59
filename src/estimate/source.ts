import type { Record } from '../vocabulary/index.js';
import type { Source } from './types.js';

/** The title, or the name where the title can't be read: the line is known by it all the same. */
export function titleOf({ title, name }: Record): string | undefined {
  return title?.text ?? name?.name;
}

export function sourceOf(record: Record): Source {
  return { record, at: record.at, broken: record.broken };
}
