import type { Span } from '../../language/index.js';
import type { Changes, OptionPair } from '../../weigh/changes/index.js';
import { exportStyle } from '../export/export-style.js';
import { moneyText } from '../numbers.js';
import { html, type Html } from '../page/html.js';
import { standalone } from '../standalone.js';
import { hoursMove, move } from './change-words.js';
import { movedOptions, rowsOf, signedText, type ChangeRow } from './rows.js';
import { beyondSentence, isNothing, NOTHING_CHANGED, pickSentence, readySentence, warnings } from './whole-words.js';

/** What changed as one page to keep, print or send to a colleague. For the shop: what goods cost it may be among it. */
export function changesHtml(changes: Changes): string {
  const title = changes.after.title ?? changes.before.title ?? 'Estimate';
  return standalone('en', `What changed: ${title}`, exportStyle, html`<main>
${inside(changes, 'kept')}
</main>`);
}

/** Kept as it is, or shown in a panel where each change leads to its line. */
type Use = 'kept' | 'shown';

/** The inside of that page, for a panel; with why it can't be brought up to date, where it can't. */
export function changesPart(changes: Changes, outdated?: string): string {
  const warning = outdated === undefined ? html`` : html`<p class="verdict" role="status">This is from before, and is not brought up to date: ${outdated}</p>
`;
  return html`${warning}${inside(changes, 'shown')}`.markup;
}

const changeId = (index: number) => `.change.${index + 1}`;

/** Where the changes of the panel lead: to their lines in the new version; what is only in the old one leads to where it stood below. */
export function changesTargets({ changes }: Changes): ReadonlyMap<string, readonly Span[]> {
  return new Map(changes.map(({ after, link }, i) => [changeId(i), [after?.at, link?.by.at].filter((span) => span !== undefined)]));
}

function inside(changes: Changes, use: Use): Html {
  const title = changes.after.title ?? changes.before.title ?? 'Estimate';
  const head = html`<h1>${bdi(title)}</h1><p class="about">${bdi(changes.before.name)} → ${bdi(changes.after.name)}</p>
${warnings(changes).map(paragraph)}`;
  if (isNothing(changes)) return html`${head}${paragraph(NOTHING_CHANGED)}`;
  const sentences = [pickSentence(changes), readySentence(changes), beyondSentence(changes)].filter((one) => one !== '');
  return html`${head}${sentences.map(paragraph)}${effectSection(changes, use)}${optionSection(changes)}`;
}

function paragraph(sentence: string): Html {
  return html`<p class="verdict">${sentence}</p>
`;
}

function effectSection(changes: Changes, use: Use): Html {
  const { changes: own, follows, beside } = rowsOf(changes);
  const columns = changes.comparable ? movedOptions(changes) : [];
  const body = (rows: readonly ChangeRow[]) => rows.map((row) => effectRow(row, columns, changes));
  const leading = own.map((row, i) => effectRow(row, columns, changes, use === 'shown' && changes.changes[i]?.after !== undefined ? changeId(i) : undefined));
  const named = (title: string, rows: readonly ChangeRow[]) => (rows.length === 0 ? html`` : html`<tbody class="headed"><tr data-key="of"><th scope="rowgroup" colspan="${columns.length + 1}">${title}</th></tr>
${body(rows)}</tbody>
`);
  return section('What changed', columns, changes, html`<tbody>
${leading}</tbody>
${named('What follows', follows)}${named('Beside the total: what comes back, worth given up', beside)}`);
}

function section(says: string, columns: readonly number[], { options, money }: Changes, bodies: Html): Html {
  const titleOf = (i: number) => (options[i]?.after ?? options[i]?.before)?.title ?? '';
  return html`<section><h2>${says}</h2><div class="wide" role="region" aria-label="${says}" tabindex="0"><table class="figures">
<thead><tr><td>${money.currency.code}</td>${columns.map((i) => html`<th scope="col"><span>${bdi(titleOf(i))}</span></th>`)}</tr></thead>
${bodies}</table></div></section>
`;
}

function effectRow({ words, note, amounts }: ChangeRow, columns: readonly number[], changes: Changes, id?: string): Html {
  const says = id === undefined ? bdi(words) : html`<button type="button" data-figure="${id}">${bdi(words)}</button>`;
  return html`<tr><th scope="row">${says}${note === '' ? undefined : html` <span class="said">${bdi(note)}</span>`}</th>${columns.map((i) => html`<td>${signedText(amounts[i] as (typeof amounts)[number], changes)}</td>`)}</tr>
`;
}

/** The options as columns, as in the comparison. */
function optionSection(changes: Changes): Html {
  const { options, money, comparable } = changes;
  const dated = options.some(({ before, after }) => (before ?? after)?.ready !== undefined);
  const row = (label: string, cell: (pair: OptionPair) => string, sort = ''): Html => html`<tr class="${sort}"><th scope="row">${label}</th>${options.map((pair) => html`<td>${cell(pair)}</td>`)}</tr>
`;
  const amounts = (says: string, key: 'total' | 'inAll'): Html => html`<tbody class="headed"><tr data-key="of"><th scope="rowgroup" colspan="${options.length + 1}">${says}</th></tr>
${row('before', ({ before }) => (before === undefined ? 'new' : moneyText(before[key], money)))}${row('now', ({ after }) => (after === undefined ? 'gone' : moneyText(after[key], money)), 'now')}${comparable ? row('more or less', ({ before, after }) => (before === undefined || after === undefined ? '' : signedText(after[key].minus(before[key]), changes)), 'aside') : undefined}</tbody>
`;
  return section('Old and new', options.map((_, i) => i), changes, html`${amounts('Total', 'total')}${amounts('Cost in all', 'inAll')}<tbody>
${row('Hours', ({ before, after }) => hoursMove(before?.hours, after?.hours))}${row(dated ? 'Ready' : 'Working days', ({ before, after }) => (dated ? move(before?.ready, after?.ready) : move(before?.days.toFixed(), after?.days.toFixed())))}</tbody>
`);
}

function bdi(text: string): Html {
  return html`<bdi>${text}</bdi>`;
}
