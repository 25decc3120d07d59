import type { Decision, Figure, Line, Weighed } from '../../weigh/index.js';
import { cautionLines, estimateNotice } from '../cautions.js';
import { place, wayWords } from '../comparison-text.js';
import { coveredSentence, flipSentence, inspectionSentence, shareText, unreadSentence } from '../decision-words.js';
import { decisionVerdict, nearestQuoted } from '../decision-verdict.js';
import { figureNames, figureOf, type FigureName } from '../figures.js';
import { hoursText, moneyText, valueText } from '../numbers.js';
import { withWholeDates } from '../page/dates.js';
import { html, type Html } from '../page/html.js';
import { stageLines } from '../stage-text.js';
import { standalone } from '../standalone.js';
import { exportStyle } from './export-style.js';

/**
 * The comparison as one file to keep, print or send to a colleague: what the panel shows, unfolded and without its
 * controls. For the shop: its margin is not in it, but flip points may name what something costs it. A customer gets a quote.
 */
export function comparisonHtml(decision: Decision): string {
  const { estimate, options } = decision.comparison;
  const title = estimate.header?.title ?? estimate.vehicle?.title ?? 'Estimate';
  const vehicle = estimate.header === undefined ? undefined : estimate.vehicle?.title;
  const body = html`<main>
<h1>${bdi(title)}</h1>${vehicle === undefined ? undefined : html`<p class="about">${bdi(vehicle)}</p>`}
<p class="verdict">${withWholeDates(decisionVerdict(decision))}</p>
${options.length === 0 ? undefined : html`${sideBySide(decision)}${list('Before the decision', stageLines(decision.comparison))}${waysIn(options, decision)}${list('What would turn the choice, nearest first', nearestQuoted(decision).map((flip) => flipSentence(flip, decision.comparison.money)))}${list('Inspect first?', [...decision.inspections.map((one) => inspectionSentence(one, decision.comparison)), ...decision.unread.map(unreadSentence)])}${list('Recalls and the like', decision.coverages.map(coveredSentence))}${options.map((one) => linesOf(one, decision))}`}${list('Cautions', [...estimateNotice, ...cautionLines(options.flatMap(({ cautions }) => cautions))])}
</main>`;
  return standalone('en', `Comparison: ${title}`, exportStyle, body);
}

const MONEY: readonly FigureName[] = ['access', 'labour', 'parts', 'outside', 'fees', 'cores', 'tax', 'total', 'cores-back', 'pieces', 'tax-kept', 'net', 'given-up', 'in-all', 'penalty'];
const OTHERS: readonly FigureName[] = ['hours', 'penalty-hours', 'days', 'bay', 'waiting'];
const SUMS: ReadonlySet<FigureName> = new Set(['total', 'net', 'in-all']);

function sideBySide({ comparison, options: decided, cases }: Decision): Html {
  const { options, money } = comparison;
  const figure = (name: FigureName) => {
    const cells = options.map((one) => figureOf(one, name));
    if (cells.every((cell) => cell === undefined || cell.high.isZero())) return html``;
    return row(figureNames[name], cells.map((cell) => (cell === undefined ? '' : valueText(cell.likely, cell.unit, money))), SUMS.has(name) ? 'sum' : 'part');
  };
  const point = (label: string, of: (total: Figure) => Figure['likely']) => row(label, options.map(({ totals: { total } }) => moneyText(of(total), money)), 'aside');
  return html`<section><h2>Side by side</h2>${scrolling('Side by side', html`<table>
<thead><tr><td>${money.currency.code}</td>${options.map((one) => html`<th scope="col">${bdi(one.option.title)}<span class="aside">${one.option.name}${place(one, comparison) === '' ? '' : ` · ${place(one, comparison)}`}${one.option.ruledOutBy.map((finding, i) => html`${i === 0 ? ': ' : ', '}${bdi(finding.title)}`)}</span></th>`)}</tr></thead>
<tbody>${MONEY.map(figure)}</tbody>
<tbody>${point('Total if everything comes in low', ({ low }) => low)}${point('Total if everything comes in high', ({ high }) => high)}</tbody>
<tbody>${OTHERS.map(figure)}${row('Ready', options.map(({ ready }) => ready.date ?? ''), 'part')}${decided.some(({ risk }) => risk?.ready !== undefined) ? row('Ready in 9 of 10 cases by', decided.map(({ risk }) => risk?.ready?.p90 ?? ''), 'aside') : undefined}${cases === undefined ? undefined : row(`Cheapest in so many of ${cases} cases`, decided.map(({ risk }) => (risk?.cheapest === undefined ? '' : shareText(risk.cheapest))), 'aside')}</tbody>
</table>`)}</section>
`;
}

/** On a narrow screen a table scrolls inside itself, also by keyboard. */
function scrolling(name: string, table: Html): Html {
  return html`<div class="wide" role="group" aria-label="${name}" tabindex="0">${table}</div>`;
}

function row(label: string, cells: readonly string[], sort: 'part' | 'sum' | 'aside'): Html {
  return html`<tr class="${sort}"><th scope="row">${label}</th>${cells.map((cell) => html`<td>${cell}</td>`)}</tr>
`;
}

function waysIn(options: readonly Weighed[], { comparison: { money } }: Decision): Html {
  const body = ({ option, planned: { chosen, others } }: Weighed) => html`<tbody>${[chosen, ...others].map((plan, i) => html`<tr>${i === 0 ? html`<th scope="rowgroup" rowspan="${others.length + 1}">${bdi(option.title)}</th>` : undefined}<td class="words">${wayWords(plan)}${i === 0 ? (option.way === undefined ? ' (chosen)' : ' (pinned)') : ''}</td><td>${moneyText(plan.money, money)}</td><td>${hoursText(plan.hours)} h</td></tr>
`)}</tbody>`;
  return html`<section><h2>Ways in</h2>${scrolling('Ways in', html`<table><thead><tr><th scope="col">Option</th><th scope="col" class="words">With</th><th scope="col">Total</th><th scope="col">Hours</th></tr></thead>
${options.map(body)}</table>`)}</section>
`;
}

function linesOf({ option, totals }: Weighed, { comparison: { money } }: Decision): Html {
  const amount = (figure: Figure) => moneyText(figure.likely, money);
  return html`<section><h2>${bdi(option.title)}, line by line</h2>${scrolling(`${option.title}, line by line`, html`<table>
<thead><tr><th scope="col">Line</th><th scope="col">Hours</th><th scope="col">Amount</th></tr></thead>
<tbody>${totals.lines.map((line) => html`<tr><th scope="row">${bdi(line.title)} <span class="aside">${aboutLine(line)}</span></th><td>${line.hours === undefined ? '' : hoursText(line.hours.likely)}</td><td>${amount(line.amount)}</td></tr>
`)}${totals.taxes.filter((one) => !one.amount.high.isZero()).map((one) => html`<tr><th scope="row">${bdi(one.tax.title)}</th><td></td><td>${amount(one.amount)}</td></tr>
`)}<tr class="sum"><th scope="row">Total</th><td>${hoursText(totals.hours.likely)}</td><td>${amount(totals.total)}</td></tr></tbody>
</table>`)}</section>
`;
}

const KINDS: Readonly<Record<Line['kind'], string>> = { labour: 'labour', part: 'part', sublet: 'outside work', fee: 'fee', core: 'core charge' };

function aboutLine({ kind, share, condition, quantity }: Line): string {
  return [KINDS[kind], ...(share === 'access' ? ['for getting in'] : []), ...(quantity === undefined ? [] : [`${quantity.likely.toFixed()} of it`]), ...(condition === undefined || kind !== 'part' ? [] : [condition.replace('-', ' ')])].join(', ');
}

function list(title: string, items: readonly string[]): Html {
  return items.length === 0 ? html`` : html`<section><h2>${title}</h2><ul>${items.map((item) => html`<li>${item}</li>`)}</ul></section>
`;
}

function bdi(text: string): Html {
  return html`<bdi>${text}</bdi>`;
}
