import type { Statement } from '../../language/index.js';
import type { Line, Plan } from '../../weigh/index.js';

/** What a plan made of each line of text. */
interface LineIndex {
  /** Its lines by the statement of the record that they were made from. */
  readonly lines: ReadonlyMap<Statement, readonly Line[]>;
  /** Labour lines by the place of the time that was taken. */
  readonly times: ReadonlyMap<Statement, ReadonlyMap<number, Line>>;
}

const indexes = new WeakMap<Plan, LineIndex>();

/** The index of an option's plan. An option that did not change keeps its plan, and with it the index. */
export function lineIndex(plan: Plan): LineIndex {
  let found = indexes.get(plan);
  if (found === undefined) {
    found = makeIndex(plan);
    indexes.set(plan, found);
  }
  return found;
}

function makeIndex(plan: Plan): LineIndex {
  const lines = new Map<Statement, Line[]>();
  for (const line of plan.totals.lines) {
    const list = lines.get(line.record.statement);
    if (list === undefined) lines.set(line.record.statement, [line]);
    else list.push(line);
  }
  const times = new Map<Statement, Map<number, Line>>();
  for (const { job, mode, line } of plan.jobs) {
    const list = times.get(job.record.statement) ?? new Map<number, Line>();
    list.set(mode.at.start, line);
    times.set(job.record.statement, list);
  }
  return { lines, times };
}
