import type { Decimal } from '../../vocabulary/index.js';
import type { MarginOf } from '../../weigh/index.js';
import { moneyText } from '../numbers.js';
import { figureButton, likelyText, title } from './cells.js';
import { notSaid, rowGroup, sideBySide, type DecidedColumn, type DecisionView } from './decided.js';
import { figureId, lineId } from './targets.js';
import { html, type Html } from './html.js';

const LABELS: Readonly<Record<MarginOf['sort'], string>> = { labour: 'on labour', parts: 'on parts', outside: 'on outside work' };

/** What stays with the shop. Closed until it is asked for: the customer may stand beside the screen. */
export function shopOnly({ columns }: DecisionView): Html | undefined {
  const isKnown = ({ cost }: MarginOf) => !cost.likely.isZero();
  if (!columns.some(({ decided: { margin } }) => margin.by.some(isKnown))) return undefined;
  const sorts = (Object.keys(LABELS) as MarginOf['sort'][]).filter((sort) => columns.some(({ decided: { margin } }) => margin.by.some((of) => of.sort === sort && isKnown(of))));
  const of = ({ decided: { margin } }: DecidedColumn, sort: MarginOf['sort']) => margin.by.find((one) => one.sort === sort) as MarginOf;
  const per = (pick: (one: DecidedColumn) => Decimal | undefined) => (one: DecidedColumn) => {
    const value = pick(one);
    return value === undefined ? notSaid : figureButton(figureId(one.column, 'margin'), moneyText(value, one.column.money));
  };
  return html`<section data-key="shop" aria-labelledby="shop-title"><h2 id="shop-title">For the shop’s eyes only</h2><details data-key="shop only"><summary>Margin <span class="said">never for a customer</span></summary>
${sideBySide('Margin of the shop', columns, [
  rowGroup('margin', undefined, columns, [
    ...sorts.map((sort) => ({ key: sort, label: LABELS[sort], cell: (one: DecidedColumn) => figureButton(figureId(one.column, `margin-${sort}`), likelyText(of(one, sort).margin, one.column.money)) })),
    { key: 'all', label: 'Margin', kind: 'sum', cell: (one) => figureButton(figureId(one.column, 'margin'), likelyText(one.decided.margin.margin, one.column.money)) },
  ]),
  rowGroup('per', undefined, columns, [
    { key: 'hour', label: 'an hour of work', kind: 'aside', cell: per(({ decided }) => decided.margin.perHour) },
    { key: 'day', label: 'a day in the bay', kind: 'aside', cell: per(({ decided }) => decided.margin.perBayDay) },
  ]),
])}${leftOut(columns)}</details></section>`;
}

/** Lines whose cost to the shop nobody wrote down: the margin is without them. */
function leftOut(columns: readonly DecidedColumn[]): Html {
  const some = columns.filter(({ decided: { margin } }) => margin.by.some(({ unknown }) => unknown.length > 0));
  if (some.length === 0) return html``;
  return html`<p class="lead">Left out, since their cost is not written:</p><ul>${some.map(({ column, decided: { margin } }) => html`<li data-key="${column.key}">${title(column.weighed.option.title)}: ${margin.by.flatMap(({ unknown }) => unknown).map((line, i) =>
    html`${i === 0 ? '' : ', '}${figureButton(lineId(column, column.weighed.totals.lines.indexOf(line)), line.title)}`)}</li>`)}</ul>`;
}
