import type { Statement } from '../../language/index.js';
import type { Line, Totals } from '../../weigh/index.js';

const indexes = new WeakMap<Totals, ReadonlyMap<Statement, readonly Line[]>>();

/** The lines of an option by the statement they were made from. An option that did not change keeps its index. */
export function linesBy(totals: Totals): ReadonlyMap<Statement, readonly Line[]> {
  let found = indexes.get(totals);
  if (found === undefined) {
    const made = new Map<Statement, Line[]>();
    for (const line of totals.lines) {
      const list = made.get(line.record.statement);
      if (list === undefined) made.set(line.record.statement, [line]);
      else list.push(line);
    }
    found = made;
    indexes.set(totals, found);
  }
  return found;
}
