import type { Figure, Monthly } from '../../weigh/index.js';
import { figureButton, likelyText } from './cells.js';
import { notSaid, rowGroup, sideBySide, titled, type DecidedColumn, type DecisionView, type GroupRow } from './decided.js';
import { monthlyId } from './decision-targets.js';
import { figureId } from './targets.js';
import { html, type Html } from './html.js';

/** What an option costs in each month of the service after it, and what the days without the vehicle cost. */
export function perMonth({ columns }: DecisionView): Html | undefined {
  const has = (of: (one: DecidedColumn) => unknown) => columns.some((one) => of(one) !== undefined);
  const spread = has(({ decided }) => decided.monthly);
  const away = has(({ decided }) => decided.downtime);
  if (!spread && !away) return undefined;
  const cell = (id: (of: DecidedColumn) => string, pick: (of: DecidedColumn) => Figure | undefined) => (of: DecidedColumn) => {
    const figure = pick(of);
    return figure === undefined ? notSaid : figureButton(id(of), likelyText(figure, of.column.money));
  };
  const monthly = (key: 'now' | 'resale' | 'perMonth', label: string, kind?: 'sum'): GroupRow => ({
    key, label, ...(kind === undefined ? {} : { kind }), cell: cell(({ column }) => monthlyId(column, key), ({ decided }) => decided.monthly?.[key]),
  });
  return titled('months', spread ? 'Cost per month' : 'Days without the vehicle', [sideBySide(spread ? 'Cost per month of service' : 'Days without the vehicle', columns, [
    spread ? rowGroup('months', undefined, columns, [
      monthly('now', 'Put into it now'),
      { key: 'lasts', label: 'It then lasts', cell: ({ column, decided }) => (decided.monthly === undefined ? notSaid : figureButton(monthlyId(column, 'lasts'), monthsText(decided.monthly))) },
      monthly('resale', 'It then brings'),
      monthly('perMonth', 'Per month', 'sum'),
    ]) : undefined,
    away ? rowGroup('away', undefined, columns, [{ key: 'downtime', label: 'Days without the vehicle', cell: cell(({ column }) => figureId(column, 'downtime'), ({ decided }) => decided.downtime) }]) : undefined,
  ]), hint(spread, away)]);
}

function monthsText({ months }: Monthly): string {
  return `${months.toDecimalPlaces(1).toFixed()} months`;
}

function hint(spread: unknown, away: unknown): Html {
  const says = [
    ...(spread === true ? ['What is put in now counts what the vehicle would bring as it stands, since keeping it costs that too.'] : []),
    ...(away === true ? ['What days without it cost the customer is not part of the quote.'] : []),
  ];
  return html`<p class="hint">${says.join(' ')}</p>`;
}
