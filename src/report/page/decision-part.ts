import { decisionVerdict } from '../decision-verdict.js';
import { bayCalendar } from './bay-calendar.js';
import type { DecisionView } from './decided.js';
import { howSure } from './how-sure.js';
import { html } from './html.js';
import { perMonth } from './per-month.js';
import { coverage, lookFirst, whatFlips } from './sentence-lists.js';
import { shopOnly } from './shop-only.js';
import { verdictPart } from './verdict-part.js';

/**
 * What takes longer to work out than anybody should wait for the figures: the page is shown without it, with places
 * that this fills. A place is an element with `data-later` and the same key.
 */
export function decisionPart(view: DecisionView): string {
  return html`${verdictPart(decisionVerdict(view.decision), view.decision.comparison)}
<div data-key="decision" data-later>${howSure(view)}${whatFlips(view)}${lookFirst(view)}${coverage(view)}${bayCalendar(view)}${perMonth(view)}</div>
<div data-key="shop-only" data-later>${shopOnly(view)}</div>`.markup;
}
