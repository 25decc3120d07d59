import { aboutText, shareText } from '../decision-words.js';
import { figureButton, title } from './cells.js';
import { notSaid, rowGroup, sideBySide, titled, type DecidedColumn, type DecisionView, type GroupRow } from './decided.js';
import { sureDrawings } from './drawings.js';
import { movesId, sampledId } from './decision-targets.js';
import { html, type Html } from './html.js';

const POINTS = [['p10', '10 % of cases: up to'], ['p50', '50 % of cases: up to'], ['p90', '90 % of cases: up to']] as const;
/** The same points of a date, which is not up to but by. */
const DATES = [['p10', '10 % of cases: by'], ['p50', '50 % of cases: by'], ['p90', '90 % of cases: by']] as const;

/** How sure the figures are: cases drawn from the ranges and chances. Nothing where nothing varies. */
export function howSure(view: DecisionView): Html | undefined {
  const { decision, columns } = view;
  const { cases } = decision;
  const drawn = columns.filter(({ decided }) => decided.risk !== undefined);
  if (cases === undefined || drawn.length === 0) return undefined;
  const button = (of: DecidedColumn, text: string) => figureButton(sampledId(of.column), text);
  const about = (value: (of: DecidedColumn) => number) => (of: DecidedColumn) => button(of, aboutText(value(of), of.column.money));
  const often = (value: (of: DecidedColumn) => number | undefined) => (of: DecidedColumn) => {
    const share = value(of);
    return share === undefined ? notSaid : button(of, shareText(share));
  };
  const points = POINTS.map(([point, label]): GroupRow => ({ key: point, label, cell: about(({ decided: { risk } }) => risk?.inAll[point] ?? NaN) }));
  const dates = DATES.map(([point, label]): GroupRow => ({ key: point, label, cell: (of) => readyCell(of, point) }));
  return titled('sure', 'How sure', [
    ...sureDrawings(view),
    sideBySide('How sure the figures are', drawn, [
      rowGroup('share', undefined, drawn, [
        { key: 'cheapest', label: 'Cheapest, share of cases', cell: often(({ decided: { risk } }) => risk?.cheapest) },
        ...(drawn.some(({ decided: { risk } }) => (risk?.trouble ?? 0) > 0) ? [{ key: 'trouble', label: 'Something turns up', cell: often(({ decided: { risk } }) => risk?.trouble) }] : []),
      ]),
      rowGroup('cost', 'Cost in all', drawn, [...points, { key: 'average', label: 'on average', cell: about(({ decided }) => decided.average) }]),
      rowGroup('ready', 'Ready', drawn, dates),
    ]),
    whatMovesIt(drawn),
    html`<p class="hint">${cases} cases, drawn from the low, likely and high figures and from the chances; the same file always gives the same ones. Rounded, and never part of a quote.</p>`,
  ]);
}

function readyCell({ column, decided: { risk } }: DecidedColumn, point: 'p10' | 'p50' | 'p90'): Html {
  if (risk === undefined) return notSaid;
  return figureButton(sampledId(column), risk.ready === undefined ? `${risk.days[point]} d` : risk.ready[point]);
}

/** The lines that most of the spread goes with, option by option. */
function whatMovesIt(columns: readonly DecidedColumn[]): Html {
  const moved = columns.filter(({ decided: { risk } }) => (risk?.contributions.length ?? 0) > 0);
  if (moved.length === 0) return html``;
  return html`<p class="lead">What most of the spread goes with:</p><ul class="shares">${moved.map(({ column, decided: { risk } }) => html`<li data-key="${column.key}">${title(column.weighed.option.title)}<ul>${(risk?.contributions ?? []).map((one, i) =>
    html`<li data-key="${i}"><span class="share">${shareText(one.share)}</span> ${figureButton(movesId(column, i), one.title)}</li>`)}</ul></li>`)}</ul>`;
}
