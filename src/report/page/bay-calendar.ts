import type { Estimate } from '../../estimate/index.js';
import type { TimedTask } from '../../weigh/index.js';
import { HOLDS_ALL } from '../decision-words.js';
import { title } from './cells.js';
import { dateText } from './dates.js';
import { titled, type DecidedColumn, type DecisionView } from './decided.js';
import { timelineDrawing } from './drawings.js';
import { taskId } from './decision-targets.js';
import { html, type Html } from './html.js';

/** Who does what when, option by option, closed until it is asked for. */
export function bayCalendar({ columns, decision }: DecisionView): Html | undefined {
  const planned = columns.filter(({ decided }) => decided.weighed.ready.tasks.length > 0);
  return planned.length === 0 ? undefined : titled('calendar', 'Calendar', planned.map((of) => planOf(of, decision.comparison.estimate)));
}

function planOf(of: DecidedColumn, estimate: Estimate): Html {
  const { column, decided: { weighed: { option, ready } } } = of;
  const days = `${ready.days.likely.toFixed()} working day${ready.days.likely.eq(1) ? '' : 's'}${ready.date === undefined ? '' : `, ready ${dateText(ready.date)}`}`;
  const inOrder = ready.tasks.map((row, i) => ({ row, i })).sort((a, b) => a.row.start - b.row.start || a.row.end - b.row.end || a.i - b.i);
  const drawn = timelineDrawing(of, estimate);
  return html`${drawn === undefined ? undefined : html`<p class="lead" data-key="of ${column.key}">${title(option.title)}</p>`}${drawn}<details data-key="calendar ${column.key}"><summary>${title(option.title)} <span class="said">${days}</span></summary>
<div class="wide"><table class="list dates"><caption class="unseen">Calendar of ${option.title}</caption>
<thead><tr><th scope="col">What</th><th scope="col">From</th><th scope="col">To</th><th scope="col">Who</th><th scope="col">Slack</th></tr></thead>
<tbody>${inOrder.map(({ row, i }) => taskRow(row, taskId(column, i)))}</tbody>
</table></div><p class="hint">${howFirm(ready)}</p></details>`;
}

function taskRow(row: TimedTask, id: string): Html {
  const { task, start, end, from, to, technician } = row;
  const at = (date: string | undefined, hours: number) => (date === undefined ? `hour ${hours.toFixed(1)}` : dateText(date));
  return html`<tr data-key="${id}" data-row="${id}" class="${row.critical ? 'critical' : ''}"><th scope="row"><button type="button" data-figure="${id}">${title(task.title)}</button></th>
<td>${at(from, start)}</td><td>${at(to, end)}</td><td>${technician === undefined ? (task.holdsAll ? `wait: ${HOLDS_ALL}` : 'wait') : `technician ${technician}`}</td><td>${slackWords(row)}</td></tr>`;
}

function slackWords({ task, critical, slack }: TimedTask): string {
  if (critical) return 'critical';
  return task.counts ? `${slack.toFixed(1)} h` : 'holds nothing up';
}

/** How firm the last day is: by the three points of what decides it, and whether the plan could be shorter. */
function howFirm({ byChance, proven, gap, technicians, hoursPerDay }: DecidedColumn['decided']['weighed']['ready']): string {
  const sure = byChance.map(({ chance, days, date }) => `${Math.round(chance * 100)} % by ${date === undefined ? `day ${days}` : dateText(date)}`).join(', ');
  const hands = `${technicians === 1 ? 'One technician' : `${technicians} technicians`}, ${hoursPerDay} h a day.`;
  const shortest = proven ? 'No order of the work is ready sooner.' : `Another order could be ready up to ${gap.toFixed(1)} h sooner.`;
  return `${hands} What is critical decides the day. ${shortest}${sure === '' ? '' : ` By the ranges of the critical work: ${sure}.`}`;
}
