import type { Span } from '../../language/index.js';
import type { Changes } from '../../weigh/changes/index.js';
import { exportStyle } from '../export/export-style.js';
import { moneyText } from '../numbers.js';
import { html, type Html } from '../page/html.js';
import { standalone } from '../standalone.js';
import { hoursMove, move, nameOf } from './change-words.js';
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

/** The inside of that page, for a panel. */
export function changesPart(changes: Changes): string {
  return inside(changes, 'shown').markup;
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
  const named = (title: string, rows: readonly ChangeRow[]) => (rows.length === 0 ? html`` : html`<tbody><tr class="aside"><th scope="rowgroup" colspan="${columns.length + 1}">${title}</th></tr>
${body(rows)}</tbody>
`);
  return html`<section><h2>What changed</h2><table>
<thead><tr><th scope="col">${changes.money.currency.code}</th>${columns.map((i) => html`<th scope="col">${bdi(nameOf(i, changes))}</th>`)}</tr></thead>
<tbody>
${leading}</tbody>
${named('What follows', follows)}${named('Beside the total: what comes back, worth given up', beside)}</table></section>
`;
}

function effectRow({ words, note, amounts }: ChangeRow, columns: readonly number[], changes: Changes, id?: string): Html {
  const says = id === undefined ? bdi(words) : html`<button type="button" data-figure="${id}">${bdi(words)}</button>`;
  return html`<tr><th scope="row">${says}${note === '' ? undefined : html` <span class="aside">(${bdi(note)})</span>`}</th>${columns.map((i) => html`<td>${signedText(amounts[i] as (typeof amounts)[number], changes)}</td>`)}</tr>
`;
}

function optionSection(changes: Changes): Html {
  const { options, money, comparable } = changes;
  const dated = options.some(({ before, after }) => (before ?? after)?.ready !== undefined);
  const amounts = (key: 'total' | 'inAll', { before, after }: Changes['options'][number]) => html`<td>${before === undefined ? 'new' : moneyText(before[key], money)}</td><td>${after === undefined ? 'gone' : moneyText(after[key], money)}</td><td>${before === undefined || after === undefined || !comparable ? '' : signedText(after[key].minus(before[key]), changes)}</td>`;
  const rows = options.map((pair, i) => html`<tr><th scope="row">${bdi((pair.after ?? pair.before)?.title ?? '')} <span class="aside">${nameOf(i, changes)}</span></th>${amounts('total', pair)}${amounts('inAll', pair)}<td>${hoursMove(pair.before?.hours, pair.after?.hours)}</td><td>${dated ? move(pair.before?.ready, pair.after?.ready) : move(pair.before?.days.toFixed(), pair.after?.days.toFixed())}</td></tr>
`);
  return html`<section><h2>Old and new</h2><table>
<thead><tr><th scope="col">Option</th><th scope="col">Total before</th><th scope="col">after</th><th scope="col">by</th><th scope="col">In all before</th><th scope="col">after</th><th scope="col">by</th><th scope="col">Hours</th><th scope="col">${dated ? 'Ready' : 'Working days'}</th></tr></thead>
<tbody>
${rows}</tbody></table></section>
`;
}

function bdi(text: string): Html {
  return html`<bdi>${text}</bdi>`;
}
