import type { Statement } from '../../language/index.js';
import type { Record } from '../../vocabulary/index.js';

/** The record that a line is the head of, at whatever depth; undefined for a line that only says a fact. */
export function recordIn(statement: Statement, records: readonly Record[]): Record | undefined {
  for (const record of records) {
    const found = record.statement === statement ? record : recordIn(statement, record.children);
    if (found !== undefined) return found;
  }
  return undefined;
}
