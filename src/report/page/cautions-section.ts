import { cautionLines, estimateNotice } from '../cautions.js';
import type { PageView } from './cells.js';
import { html, type Html } from './html.js';

/** What an estimate is and is not, and the cautions of the work that is weighed. */
export function cautionsSection({ columns }: PageView): Html {
  const cautions = cautionLines(columns.flatMap(({ weighed }) => weighed.cautions));
  return html`<section data-key="cautions" aria-labelledby="cautions-title"><h2 id="cautions-title">Cautions</h2>
${estimateNotice.map((says) => html`<p>${says}</p>`)}
${cautions.length === 0 ? undefined : html`<ul>${cautions.map(caution)}</ul>`}</section>`;
}

/** A caution starts with its topic, up to the first colon. */
function caution(says: string): Html {
  const colon = says.indexOf(':');
  return html`<li data-key="${says.slice(0, colon)}"><strong>${says.slice(0, colon)}</strong>${says.slice(colon)}</li>`;
}
