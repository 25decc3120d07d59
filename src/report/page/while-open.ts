import type { WhileOpen } from '../../weigh/index.js';
import { figureButton, likelyText, title, type PageView } from './cells.js';
import { html, type Html } from './html.js';
import type { Column } from './last-good.js';
import { openId } from './targets.js';

/** What is due soon and in reach: its price while all is open, option by option, and on its own later. */
export function whileItIsOpen({ columns }: PageView): Html | undefined {
  const reaching = columns.filter((column) => column.state !== 'not-weighed' && column.weighed.open.length > 0);
  const jobs = [...new Set(reaching.flatMap(({ weighed }) => weighed.open.map(({ job }) => job)))];
  // Last good figures come from an earlier text: a job is matched by its name, which both texts have.
  const named = new Map(jobs.map((job) => [job.name ?? job.title, job.title]));
  if (named.size === 0) return undefined;
  return html`<section data-key="open" aria-labelledby="open-title"><h2 id="open-title">Cheap while it is open</h2>
<div class="wide" role="group" aria-labelledby="open-title" tabindex="0"><table class="figures">
<caption class="unseen">What each job costs while it is open, and alone</caption>
<thead><tr data-key="head"><td></td>${reaching.map(({ key, state, weighed }) => html`<th scope="col" data-key="${key}" class="${state}"><span class="said">now, with</span> ${title(weighed.option.title)}</th>`)}<th scope="col" data-key=".alone"><span class="said">alone, later</span></th></tr></thead>
<tbody>${[...named].map(([name, says]) => jobRow(name, says, reaching))}</tbody>
</table></div></section>`;
}

function jobRow(name: string, says: string, columns: readonly Column[]): Html {
  const found = columns.map((column) => ({ column, index: column.weighed.open.findIndex(({ job }) => (job.name ?? job.title) === name) }));
  const alone = found.find(({ index }) => index >= 0);
  const cell = (column: Column, index: number, pick: (one: WhileOpen) => Html) => {
    const one = column.weighed.open[index];
    return one === undefined ? html`<span aria-hidden="true">–</span><span class="unseen">not cheaper</span>` : pick(one);
  };
  const cells = found.map(({ column, index }) => html`<td data-key="${column.key}" class="${column.state}">${cell(column, index, (one) => html`${figureButton(openId(column, index), likelyText(one.now, column.money))}${saving(one, column)}`)}</td>`);
  return html`<tr data-key="${name}"><th scope="row">${title(says)}</th>${cells}<td data-key=".alone">${alone === undefined ? undefined : cell(alone.column, alone.index, (one) => figureButton(openId(alone.column, alone.index), likelyText(one.alone, alone.column.money)))}</td></tr>`;
}

function saving({ saved }: WhileOpen, { money }: Column): Html | undefined {
  return saved.likely.gt(0) ? html` <span class="said">saves ${likelyText(saved, money)}</span>` : undefined;
}
