import type { Decided, Decision } from '../../weigh/index.js';
import { title } from './cells.js';
import { html, type Html } from './html.js';
import { flipRows, type AsWritten, type FlipRow } from './flip-rows.js';
import type { Column } from './last-good.js';

/** An option that is shown as the text stands, with what was found out about it. */
export interface DecidedColumn {
  readonly column: Column;
  readonly decided: Decided;
}

/** What the later part of the page is made from. */
export interface DecisionView {
  readonly decision: Decision;
  /** Last good figures have no decision: it would be one about a text that is gone. */
  readonly columns: readonly DecidedColumn[];
  readonly flips: readonly FlipRow[];
}

/** `file` is what the file says, where the decision is about a trial. */
export function decisionView(decision: Decision, columns: readonly Column[], file?: AsWritten): DecisionView {
  return {
    decision, flips: flipRows(decision, file),
    columns: columns.flatMap((column) => {
      const decided = column.state === 'weighed' ? decision.options.find(({ weighed }) => weighed === column.weighed) : undefined;
      return decided === undefined ? [] : [{ column, decided }];
    }),
  };
}

/** A section of the page with a heading that names it. */
export function titled(key: string, says: string, inside: readonly Html[] | Html): Html {
  return html`<section data-key="${key}" aria-labelledby="${key}-title"><h2 id="${key}-title">${says}</h2>${inside}</section>`;
}

/** Some options side by side; what it is of is said for those who can't see what stands around it. */
export function sideBySide(says: string, columns: readonly DecidedColumn[], groups: readonly (Html | undefined)[]): Html {
  return html`<div class="wide" role="region" aria-label="${says}" tabindex="0"><table class="figures">
<caption class="unseen">${says}</caption>
<thead><tr data-key="head"><td></td>${columns.map(({ column }) => html`<th scope="col" data-key="${column.key}"><span>${title(column.weighed.option.title)}</span></th>`)}</tr></thead>
${groups.flatMap((group) => group ?? [])}
</table></div>`;
}

export interface GroupRow {
  readonly key: string;
  readonly label: string;
  readonly cell: (of: DecidedColumn) => Html;
  readonly kind?: 'sum' | 'aside';
}

/** Rows that belong together, under a heading of their own where they need one to be understood. */
export function rowGroup(key: string, heading: string | undefined, columns: readonly DecidedColumn[], rows: readonly GroupRow[]): Html {
  const head = heading === undefined ? undefined : html`<tr data-key="of"><th scope="rowgroup" colspan="${columns.length + 1}">${heading}</th></tr>`;
  return html`<tbody data-key="${key}" class="${heading === undefined ? '' : 'headed'}">${head}${rows.map(({ key: row, label, cell, kind = '' }) =>
    html`<tr data-key="${row}" class="${kind}"><th scope="row">${label}</th>${columns.map((of) => html`<td data-key="${of.column.key}">${cell(of)}</td>`)}</tr>`)}</tbody>`;
}

/** In place of what an option does not say. */
export const notSaid = html`<span aria-hidden="true">–</span><span class="unseen">not said</span>`;
