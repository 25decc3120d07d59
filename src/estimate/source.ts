import type { Record } from '../vocabulary/index.js';
import type { Source } from './types.js';

export function sourceOf(record: Record): Source {
  return { record, at: record.at, broken: record.broken };
}
