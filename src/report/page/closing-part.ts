import { closingOf, type ClosedLine, type ClosedPart, type Closing, type Comparison } from '../../weigh/index.js';
import type { Decimal } from '../../vocabulary/index.js';
import { closingSentences } from '../closing-text.js';
import { hoursText, moneyText } from '../numbers.js';
import { title, type PageView } from './cells.js';
import { titled } from './decided.js';
import { html, type Html } from './html.js';
import type { Targets } from './targets.js';

const tookId = (index: number): string => `.took.${index + 1}`;

/** What a job that is over really took, beside what was estimated; nothing before that. */
export function closingPart({ comparison }: PageView): Html | undefined {
  const closing = closingOf(comparison);
  if (closing === undefined) return undefined;
  const { money } = comparison;
  const amount = (value: Decimal): string => moneyText(value, money);
  let index = 0;
  const group = (key: string, says: string, { lines }: ClosedPart, text: (value: Decimal) => string): Html | undefined =>
    lines.length === 0 ? undefined : html`<tbody data-key="${key}"><tr data-key="of"><th scope="rowgroup" colspan="4">${says}</th></tr>${lines.map((one) => row(one, tookId(index++), text))}</tbody>`;
  return titled('took', 'What it took', [
    html`${closingSentences(closing, money).map((says) => html`<p>${says}</p>`)}`,
    html`<details data-key="took lines"><summary>Line by line</summary><div class="wide"><table class="list">
<caption class="unseen">What each line took</caption>
<thead><tr><th scope="col">Line</th><th scope="col">Estimated</th><th scope="col">Really</th><th scope="col">More</th></tr></thead>
${group('hours', 'Hours', closing.hours, (value) => `${hoursText(value)} h`)}${group('paid', 'Paid by the shop', closing.paid, amount)}${group('cores', 'Core money back', closing.cores, amount)}
</table></div></details>`,
  ]);
}

/** Where its lines lead: to where the estimate says them, or else the closing. */
export function closingTargets(comparison: Comparison): Targets {
  const closing = closingOf(comparison);
  return new Map(closing === undefined ? [] : linesOf(closing).map(({ at }, i) => [tookId(i), [at]]));
}

function linesOf({ hours, paid, cores }: Closing): readonly ClosedLine[] {
  return [hours, paid, cores].flatMap(({ lines }) => lines);
}

function row({ title: says, with: ways, estimated, actual, over, planned }: ClosedLine, id: string, text: (value: Decimal) => string): Html {
  const cell = (value: Decimal | undefined, otherwise: string): string => (value === undefined ? otherwise : text(value));
  return html`<tr data-key="${id}" data-row="${id}"><th scope="row"><button type="button" data-figure="${id}">${title(says)}</button>${ways.length === 0 ? undefined : html` <span class="said">with ${ways.join(' and ')}</span>`}</th><td>${cell(estimated?.likely, planned ? 'cost not written' : 'not planned')}</td><td>${cell(actual?.likely, 'not recorded')}</td><td>${cell(over?.likely, '')}</td></tr>`;
}
