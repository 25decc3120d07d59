import type { Figure, Line } from '../../weigh/index.js';
import { explainShort } from '../explain.js';
import { figureNames, figureOf, type FigureName } from '../figures.js';
import { hoursText } from '../numbers.js';
import { likelyText, title, type PageView } from './cells.js';
import { derivationRow, unfoldButton } from './derivation-list.js';
import { html, type Html } from './html.js';
import type { Column } from './last-good.js';
import { lineId, taxId } from './targets.js';

interface Entry {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly hours: Figure | undefined;
  readonly amount: Figure;
}

/** The sums of an option in the order of the comparison, each with the lines that it adds up. */
const groups: readonly (readonly [FigureName, (line: Line) => boolean])[] = [
  ['access', ({ share }) => share === 'access'],
  ['labour', ({ share, kind }) => share === 'work' && kind === 'labour'],
  ['parts', ({ share, kind }) => share === 'work' && kind === 'part'],
  ['outside', ({ share, kind }) => share === 'work' && kind === 'sublet'],
  ['fees', ({ share, kind }) => share === 'work' && kind === 'fee'],
  ['cores', ({ kind }) => kind === 'core'],
];

/** Each option, line by line, closed until it is asked for. */
export function lineLists(view: PageView): Html | undefined {
  const shown = view.columns.filter((column) => column.state !== 'not-weighed');
  if (shown.length === 0) return undefined;
  return html`<section data-key="lines" aria-labelledby="lines-title"><h2 id="lines-title">Line by line</h2>${shown.map((column) => listOf(column, view))}</section>`;
}

function listOf(column: Column, view: PageView): Html {
  const { option, totals } = column.weighed;
  const sections = groups.map(([name, belongs]) => section(view, column, name, totals.lines.flatMap((line, i) => (belongs(line) ? [entryOf(line, lineId(column, i), column)] : []))));
  const taxes = totals.taxes.map(({ tax, amount }, i): Entry => ({ id: taxId(column, i), title: tax.title, says: explained(amount, column), hours: undefined, amount })).filter(({ amount }) => !amount.high.isZero());
  return html`<details data-key="${column.key}" class="${column.state}"><summary>${title(option.title)} <span class="said">${likelyText(totals.total, column.money)}</span></summary>
<div class="wide"><table class="list">
<caption class="unseen">${option.title}, line by line</caption>
<thead><tr><th scope="col">Line</th><th scope="col">Hours</th><th scope="col">Amount</th></tr></thead>
${sections}${section(view, column, 'tax', taxes)}
<tfoot><tr class="sum"><th scope="row">Total</th><td>${hoursCell(totals.hours)}</td><td>${likelyText(totals.total, column.money)}</td></tr></tfoot>
</table></div></details>`;
}

function section(view: PageView, column: Column, name: FigureName, entries: readonly Entry[]): Html {
  const sum = figureOf(column.weighed, name);
  if (entries.length === 0 || sum === undefined) return html``;
  return html`<tbody data-key="${name}"><tr data-key="sum"><th scope="rowgroup">${figureNames[name]}</th><td></td><td>${likelyText(sum, column.money)}</td></tr>
${entries.map((entry) => entryRow(entry, column, view))}</tbody>`;
}

function entryOf(line: Line, id: string, column: Column): Entry {
  const condition = line.kind === 'part' ? line.condition : undefined;
  const says = [condition?.replace('-', ' '), explained(line.amount, column)].filter((one) => one !== undefined && one !== '').join(', ');
  return { id, title: line.title, says, hours: line.hours, amount: line.amount };
}

/** The whole row leads to its line, by its title for the keyboard; its amount unfolds how it was made. */
function entryRow({ id, title: name, says, hours, amount }: Entry, column: Column, view: PageView): Html {
  return html`<tr data-key="${id}" data-row="${id}"><th scope="row"><button type="button" data-figure="${id}">${title(name)}</button>${says === '' ? undefined : html` <span class="said">${says}</span>`}</th><td>${hours === undefined ? '' : hoursCell(hours)}</td><td>${unfoldButton(id, html`${likelyText(amount, column.money)}<span class="unseen">, how it was made</span>`, view)}</td></tr>${derivationRow(id, 3, view)}`;
}

function hoursCell(hours: Figure): string {
  return `${hoursText(hours.likely)} h`;
}

/** `8 × 5.85` behind an amount that was multiplied. */
function explained(amount: Figure, { money }: Column): string {
  return explainShort(amount, money).replace(/^ = /, '');
}
