import type { Span, Statement } from '../../language/index.js';
import { kinds, type Record } from '../../vocabulary/index.js';
import { HOLDS_ALL } from '../../report/index.js';
import type { Comparison, TimedTask } from '../../weigh/index.js';
import { endOf } from '../navigate/lines.js';

/** Lines that the calendar plans something for. */
const PLANNED: ReadonlySet<string> = new Set([kinds.labour.word, kinds.part.word, kinds.sublet.word, kinds.access.word, kinds.tool.word]);

/** When what a line says is planned, option by option: its days, who does it, and whether it decides the end. */
export function plannedAt(statement: Statement, record: Record | undefined, { options }: Comparison): string[] {
  if (record !== undefined && !PLANNED.has(record.kind.word)) return [];
  // What stands below it with a calendar of its own says so itself.
  const others = (record?.children ?? []).filter(({ kind }) => PLANNED.has(kind.word));
  const by = new Map<string, string[]>();
  for (const { option, ready } of options) {
    const own = ready.tasks.filter(({ task: { at } }) => isOn(statement, at) && !others.some((other) => isOn(other.statement, at)));
    if (own.length === 0) continue;
    const says = own.map(sayTask).join('; ');
    by.set(says, [...(by.get(says) ?? []), option.name]);
  }
  return [...by].map(([says, names]) => `Planned in ${names.join(', ')}: ${says}.`);
}

/** Whether something is written on a line or below it. */
function isOn(statement: Statement, at: Span): boolean {
  return at.block === statement.block && (statement.tokens[0]?.start ?? 0) <= at.start && at.end <= endOf(statement);
}

function sayTask({ task, start, end, from, to, technician, slack, critical }: TimedTask): string {
  const when = from === undefined || to === undefined ? `hour ${start.toFixed(1)} to ${end.toFixed(1)}` : from === to ? from : `${from} to ${to}`;
  const who = technician === undefined ? '' : `, technician ${technician}`;
  const firm = critical ? 'critical' : task.counts ? `slack ${slack.toFixed(1)} h` : 'holds nothing up';
  return `${task.title}, ${when}${who}, ${firm}${task.holdsAll ? `; ${HOLDS_ALL}` : ''}`;
}
