import type { Comparison } from '../../weigh/index.js';
import { leadSentence } from '../verdict.js';
import { withWholeDates } from './dates.js';
import { html, type Html } from './html.js';

/**
 * The verdict in the place that is kept for it: the answer by itself, and below it what else is to be said of it. The
 * answer is the same in the quick verdict and in the fuller one, and never stays behind; `broken`: nor do the reasons.
 */
export function verdictPart(says: string, { ranking: [first, second], money }: Comparison, broken = false): Html {
  const lead = first === undefined || second === undefined ? says : leadSentence(first, second, money);
  const [answer, rest] = says.startsWith(lead) ? [lead, says.slice(lead.length).trim()] : [says, ''];
  return html`<div data-key="verdict" data-later><p data-key="answer" class="verdict" data-now>${withWholeDates(answer)}</p>${rest === '' ? undefined : html`<p data-key="reasons" class="reasons"${broken ? html` data-now` : undefined}>${withWholeDates(rest)}</p>`}</div>`;
}
