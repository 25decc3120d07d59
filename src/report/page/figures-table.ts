import type { Figure } from '../../weigh/index.js';
import { figureNames, figureOf, type FigureName } from '../figures.js';
import { moneyText } from '../numbers.js';
import { warrantyText } from '../warranty.js';
import { figureButton, isCheapest, likelyText, mark, noFigure, title, type PageView } from './cells.js';
import { weekdayText } from './dates.js';
import { notSaid } from './decided.js';
import { derivationRow, unfoldButton } from './derivation-list.js';
import { rowId } from './derivations.js';
import { html, type Html } from './html.js';
import type { Column } from './last-good.js';
import { aboveId, figureId, headId, warrantyId } from './targets.js';

type Cell = (column: Column) => Html;

/** Labels that differ from the names of the figures, since here they stand in a sum that is read downwards. */
const labels: Partial<Record<FigureName, string>> = { 'cores-back': 'less what comes back with the cores', 'tax-kept': 'tax on cores that does not come back', pieces: 'less worth of pieces kept or taken off', 'given-up': 'plus worth given up', 'penalty-hours': 'the same in hours' };

/** The options side by side: what each comes to, how sure that is, what is left of it in the end, and when. */
export function figuresTable(view: PageView): Html {
  const { columns, comparison } = view;
  const { code } = comparison.money.currency;
  const group = (key: string, rows: readonly (Html | undefined)[]) => {
    const used = rows.filter((one) => one !== undefined);
    return used.length === 0 ? undefined : html`<tbody data-key="${key}">${used}</tbody>`;
  };
  const figure = (name: FigureName, kind = '') => (counts(columns, name) ? unfolding(name, labels[name] ?? figureNames[name], view, kind) : undefined);
  const ranged = columns.some(({ weighed: { totals } }) => !totals.total.low.eq(totals.total.high));
  const adjusted = counts(columns, 'comes-back') || counts(columns, 'given-up');
  const dated = columns.some(({ weighed }) => weighed.ready.date !== undefined);
  const cheapest = comparison.ranking.length > 1;
  const warranted = columns.some(({ weighed }) => weighed.option.warranty !== undefined);
  return html`<div class="wide" role="region" aria-label="Options side by side" tabindex="0"><table class="figures">
<caption class="unseen">What each option comes to${code === '' ? '' : `, in ${code}`}</caption>
<thead><tr data-key="head"><td>${code}</td>${columns.map((column) => head(column, view))}</tr></thead>
${group('price', [figure('access'), figure('labour'), figure('parts'), figure('outside'), figure('fees'), figure('cores'), figure('tax'), unfolding('total', 'Total', view, 'sum')])}
${group('range', ranged ? [row('low', 'if everything comes in low', columns, rangeCell('low'), 'aside'), row('high', 'if everything comes in high', columns, rangeCell('high'), 'aside')] : [])}
${group('in-all', adjusted ? [figure('cores-back'), figure('tax-kept', 'aside'), figure('pieces'), figure('given-up'), unfolding('in-all', figureNames['in-all'], view, 'sum')] : [])}
${group('lead', cheapest ? [row('more', 'above the cheapest', columns, aboveCell(view), 'aside')] : [])}
${group('work', [figure('penalty'), figure('penalty-hours'), figure('hours')])}
${group('time', [unfolding('days', figureNames.days, view), figure('bay'), dated ? row('ready', 'Ready', columns, readyCell) : undefined, warranted ? row('warranty', 'Warranty', columns, warrantyCell) : undefined])}
</table></div>
<p class="hint">Each figure leads to the line it comes from; the name of a row unfolds how it was made, and there any written figure can be tried.</p>`;
}

function head(column: Column, view: PageView): Html {
  const said = mark(column, view);
  return html`<th scope="col" data-key="${column.key}" data-row="${headId(column)}" class="${column.state}"><span>${figureButton(headId(column), title(column.weighed.option.title))}</span> ${said}</th>`;
}

/** A row whose figures can be unfolded into how they were made. */
function unfolding(name: FigureName, label: string, view: PageView, kind = ''): Html {
  const { columns } = view;
  return html`${row(name, unfoldButton(rowId(name), label, view), columns, figureCell(name), kind)}${derivationRow(rowId(name), columns.length + 1, view)}`;
}

function row(key: string, label: Html | string, columns: readonly Column[], cell: Cell, kind = ''): Html {
  const cells = columns.map((column) => html`<td data-key="${column.key}" class="${column.state}">${column.state === 'not-weighed' ? noFigure : cell(column)}</td>`);
  return html`<tr data-key="${key}" class="${kind}"><th scope="row">${label}</th>${cells}</tr>`;
}

function counts(columns: readonly Column[], name: FigureName): boolean {
  return columns.some(({ weighed, state }) => state !== 'not-weighed' && figureOf(weighed, name)?.high.isZero() === false);
}

function figureCell(name: FigureName): Cell {
  return (column) => {
    const figure = figureOf(column.weighed, name);
    return figure === undefined ? noFigure : figureButton(figureId(column, name), likelyText(figure, column.money));
  };
}

function rangeCell(point: keyof Pick<Figure, 'low' | 'high'>): Cell {
  return (column) => figureButton(figureId(column, 'total'), moneyText(column.weighed.totals.total[point], column.money));
}

/** By how much an option costs more in all than the cheapest; last good figures are not measured against today's. */
function aboveCell(view: PageView): Cell {
  const best = view.comparison.ranking[0];
  return (column) => {
    if (best === undefined || column.state !== 'weighed') return noFigure;
    if (isCheapest(column, view.comparison)) return html`cheapest`;
    return figureButton(aboveId(column), moneyText(column.weighed.inAll.likely.minus(best.inAll.likely), column.money));
  };
}

function warrantyCell(column: Column): Html {
  const text = warrantyText(column.weighed.option);
  return text === undefined ? notSaid : figureButton(warrantyId(column), text);
}

/** The date as it is written in a file, its weekday, and how late it may get. */
function readyCell(column: Column): Html {
  const { date, latest } = column.weighed.ready;
  if (date === undefined) return noFigure;
  const late = latest === undefined || latest === date ? undefined : html`<span class="or">to ${weekdayText(latest)} ${latest.startsWith(date.slice(0, 5)) ? latest.slice(5) : latest}</span>`;
  return html`${figureButton(figureId(column, 'days'), date)}<span class="or">${weekdayText(date)}</span>${late}`;
}
