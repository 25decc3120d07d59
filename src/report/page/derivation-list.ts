import type { Figure, Money } from '../../weigh/index.js';
import { howMade } from '../explain.js';
import { valueText } from '../numbers.js';
import { figureButton, title, type PageView } from './cells.js';
import type { Derivation, Step } from './derivations.js';
import { html, type Html } from './html.js';
import { trialField } from './trial-field.js';

/** The button by which a row is unfolded; what it says is the row's heading, or of what the row is. */
export function unfoldButton(id: string, says: Html | string, { derivations }: PageView): Html {
  return html`<button type="button" class="unfold" data-unfold="${id}" aria-expanded="${derivations?.has(id) === true ? 'true' : 'false'}">${says}</button>`;
}

/** The row below an unfolded one: how its figures were made, each option by itself; nothing while it is folded. */
export function derivationRow(id: string, columns: number, view: PageView): Html | undefined {
  const list = view.derivations?.get(id);
  if (list === undefined) return undefined;
  return html`<tr data-key="${id} how" class="how"><td colspan="${columns}"><div class="derived">${list.map((one) => html`<div data-key="${one.column.key}">${list.length > 1 ? html`<p class="of">${title(one.column.weighed.option.title)}</p>` : undefined}${topOf(one, view)}</div>`)}</div></td></tr>`;
}

/** The figure itself stands in the row above; here is how it was made, and what from. */
function topOf({ root, column: { money } }: Derivation, view: PageView): Html {
  const words = html`<span>${howMade(root.figure)}</span>`;
  return html`<div class="made">${root.at === undefined ? step(words, root, money, view) : html`${step(figureButton(root.id, words), root, money, view)}${root.field === undefined ? undefined : trialField(root.field)}`}</div>${partsOf(root, money, view)}`;
}

function partsOf({ id, from, left }: Step, money: Money, view: PageView): Html | undefined {
  if (from.length === 0 && left === 0) return undefined;
  return html`<ul>${from.map((part) => html`<li data-key="${part.id}">${part.from.length === 0 ? leaf(part, money, view) : branch(part, money, view)}</li>`)}${left === 0 ? undefined : html`<li data-key="${id} left" class="said">and ${left} more; see line by line</li>`}</ul>`;
}

function branch(one: Step, money: Money, view: PageView): Html {
  return html`<details data-key="${one.id}"><summary>${step(html`${title(one.figure.label)}`, one, money, view, howMade(one.figure))}</summary>${partsOf(one, money, view)}</details>`;
}

function leaf(one: Step, money: Money, view: PageView): Html {
  const label = title(one.figure.label);
  const how = one.left > 0 ? `${howMade(one.figure)}; more lies below` : one.at === undefined ? howMade(one.figure) : undefined;
  return html`${step(one.at === undefined ? label : figureButton(one.id, label), one, money, view, how)}${one.field === undefined ? undefined : trialField(one.field)}`;
}

/** What it is, in small letters how and where, and at the edge what it comes to. */
function step(label: Html, { figure, at }: Step, money: Money, { lineOf }: PageView, how?: string): Html {
  const where = at === undefined ? undefined : lineOf(at);
  const text = (value: Figure['likely']): string => valueText(value, figure.unit, money);
  const said = [
    ...(figure.low.eq(figure.high) ? [] : [`${text(figure.low)} to ${text(figure.high)}`]),
    ...(how === undefined ? [] : [how]),
    ...(where === undefined ? [] : [`line ${where.line}${where.file === undefined ? '' : ` of ${where.file}`}`]),
  ];
  return html`<span class="step"><span>${label}${said.length === 0 ? undefined : html` <span class="said">${said.join(', ')}</span>`}</span> <b>${text(figure.likely)}</b></span>`;
}
