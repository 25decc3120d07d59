import type { Plan } from '../../weigh/index.js';
import { hoursText, moneyText } from '../numbers.js';
import { figureButton, title, type PageView } from './cells.js';
import { waysDrawing } from './drawings.js';
import { html, type Html } from './html.js';
import type { Column } from './last-good.js';
import { planId } from './targets.js';

/** How each option gets at its work: the plan it uses, and what the next best ones would come to. */
export function waysIn({ columns }: PageView): Html | undefined {
  const shown = columns.filter((column) => column.state !== 'not-weighed' && hasChoice(column));
  if (shown.length === 0) return undefined;
  const bodies = shown.map(plansOf);
  return html`<section data-key="ways" aria-labelledby="ways-title"><h2 id="ways-title">Ways in</h2>${waysDrawing(shown)}
<div class="wide" role="group" aria-labelledby="ways-title" tabindex="0"><table class="list">
<caption class="unseen">Ways in, option by option</caption>
<thead><tr><th scope="col">Option and way in</th><th scope="col">Total</th><th scope="col">Hours</th></tr></thead>
${bodies}
</table></div></section>`;
}

function hasChoice({ weighed: { planned } }: Column): boolean {
  return planned.chosen.jobs.length > 0 && (planned.chosen.paid.length > 0 || planned.others.length > 0);
}

function plansOf(column: Column): Html {
  const { option, planned } = column.weighed;
  const plans = [planned.chosen, ...planned.others];
  return html`<tbody data-key="${column.key}" class="${column.state}"><tr data-key="of"><th scope="rowgroup" colspan="3">${title(option.title)}</th></tr>
${plans.map((plan, i) => planRow(column, plan, i))}</tbody>`;
}

function planRow(column: Column, plan: Plan, index: number): Html {
  const id = planId(column, index);
  return html`<tr data-key="plan-${index}" class="${index === 0 ? 'chosen' : 'aside'}"><th scope="row">${wayTitles(plan)} <span class="said">${says(column, plan, index)}</span></th>
<td>${figureButton(id, moneyText(plan.money, column.money))}</td><td>${figureButton(id, `${hoursText(plan.hours)} h`)}</td></tr>`;
}

function wayTitles(plan: Plan): Html {
  if (plan.paid.length === 0) return html`In the car`;
  return html`${plan.paid.map((way, i) => html`${i === 0 ? '' : ', and '}${title(way.title)}`)}`;
}

function says(column: Column, plan: Plan, index: number): string {
  const { option, planned } = column.weighed;
  const { chosen, unpinned } = planned;
  if (index > 0) return difference(plan, chosen, column);
  if (option.way === undefined) return planned.others.length === 0 ? 'chosen; no other way in reaches all of the work' : 'chosen';
  if (unpinned === undefined || unpinned.ways === chosen.ways) return 'pinned; the cheapest too';
  return `pinned; ${difference(chosen, unpinned, column)} than the cheapest`;
}

function difference(plan: Plan, than: Plan, { money }: Column): string {
  const cost = plan.money.minus(than.money);
  const hours = plan.hours.minus(than.hours);
  const word = (positive: boolean, more: string, less: string) => (positive ? more : less);
  const inHours = hours.isZero() ? '' : `, ${hoursText(hours.abs())} h ${word(hours.gt(0), 'more', 'less')}`;
  return `${moneyText(cost.abs(), money)} ${word(cost.gte(0), 'dearer', 'cheaper')}${inHours}`;
}
