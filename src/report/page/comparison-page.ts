import { verdict } from '../verdict.js';
import { authorisedPart } from './authorised-part.js';
import { cautionsSection } from './cautions-section.js';
import { title, type PageView } from './cells.js';
import { closingPart } from './closing-part.js';
import { costDrawing } from './drawings.js';
import { findingsSection } from './findings-section.js';
import { figuresTable } from './figures-table.js';
import { html, type Html } from './html.js';
import { lineLists } from './line-lists.js';
import { stagePart } from './stage-part.js';
import { stoppedBanner } from './stopped-banner.js';
import { tryingBanner } from './trying-banner.js';
import { verdictPart } from './verdict-part.js';
import { waysIn } from './ways-in.js';
import { whileItIsOpen } from './while-open.js';

/**
 * The comparison of an estimate as the inside of a page. The order tells the story: what it is about, the answer, the
 * figures behind it, how sure they are, what was agreed and what it took, how each option gets at its work, what else is
 * due, what was found, every line, the cautions.
 * `data-key` names what stays the same thing when the page is made anew; what is marked `data-later` is filled by
 * `decisionPart`, and keeps what it holds until then.
 */
export function comparisonPage(view: PageView): string {
  const { estimate } = view.comparison;
  const name = estimate.header?.title ?? estimate.vehicle?.title ?? 'Estimate';
  const vehicle = estimate.header === undefined ? undefined : estimate.vehicle?.title;
  return html`<header data-key="title"><h1>${title(name)}</h1>${vehicle === undefined ? undefined : html`<p>${title(vehicle)}</p>`}</header>
${stoppedBanner(view.stopped === undefined ? undefined : { figures: 'from before', why: view.stopped })}
${tryingBanner(view.trying)}
${verdictPart(verdict(view.comparison), view.comparison, view.columns.some(({ state }) => state !== 'weighed'))}
${view.columns.length === 0 ? html`${stagePart(view)}${firstOption}` : options(view)}`.markup;
}

function options(view: PageView): Html {
  return html`<section data-key="costs" aria-label="What each option is made of">${costDrawing(view)}</section>
<section data-key="figures" aria-label="Side by side">${figuresTable(view)}</section>
<div data-key="decision" data-later></div>
${closingPart(view)}${authorisedPart(view)}${stagePart(view)}${waysIn(view)}${whileItIsOpen(view)}${findingsSection(view)}${lineLists(view)}${cautionsSection(view)}
<div data-key="shop-only" data-later></div>`;
}

/** What to write first; a page that only says what is missing helps nobody. */
const firstOption = html`<p data-key="first">Write one line for each way out, with its work below, and it is weighed here:</p>
<pre data-key="example">option used "Fit a used engine"
  labour "Dress and swap the engine" 5.5 h
  part   "Used engine" 1350 used</pre>`;
