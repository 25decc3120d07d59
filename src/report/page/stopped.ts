import type { Comparison } from '../../weigh/index.js';
import { verdict } from '../verdict.js';
import type { PageView } from './cells.js';
import { comparisonPage } from './comparison-page.js';
import { html } from './html.js';
import { stoppedBanner, toReport } from './stopped-banner.js';
import { verdictPart } from './verdict-part.js';

/**
 * The page where working out its figures threw: the last one that came out whole, each option of it marked as being from
 * before. `why`: the words of what threw.
 */
export function pageFromBefore(before: PageView, why: string): string {
  const columns = before.columns.map((column) => (column.state === 'not-weighed' ? column : { ...column, state: 'last-good' as const }));
  return comparisonPage({ ...before, columns, stopped: why });
}

/** That page where nothing came out before. */
export function pageOfNothing(name: string, why: string): string {
  return html`<header data-key="title"><h1>${name}</h1></header>
${stoppedBanner({ figures: 'none', why })}`.markup;
}

/** The later part of a page where that could not be worked out: a word in its place, and the verdict that needs none of it. */
export function decisionStopped(comparison: Comparison, why: string): string {
  return html`${verdictPart(verdict(comparison), comparison)}
<div data-key="decision" data-later><p class="broken" role="status">What helps to decide could not be worked out. ${toReport(why)}</p></div>
<div data-key="shop-only" data-later></div>`.markup;
}
