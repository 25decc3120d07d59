import { html, type Html } from './html.js';

/** One figure that is tried, in words. */
export interface TrialWords {
  readonly id: string;
  readonly names: string;
  readonly value: string;
  readonly instead: string;
}

/** What of the page is not as the file says. */
export interface Trying {
  readonly trials: readonly TrialWords[];
  /** Figures whose lines were edited while they were tried, so that they are tried no longer. */
  readonly dropped: readonly string[];
}

/** Says over the whole page that it shows trials, and leads out of them. The place is always there, so that a change of it is read out. */
export function tryingBanner({ trials, dropped }: Trying = { trials: [], dropped: [] }): Html {
  return html`<div data-key="trying" class="trying" role="status">${trials.length === 0 ? undefined : html`<div data-key="trials" class="trials"><p><strong>You are trying:</strong> ${trials.map(({ names, value, instead }, i) =>
    html`${i === 0 ? '' : '; '}${names} <b>${value}</b> instead of ${instead}`)}. The file is as it was.</p>
<p class="acts"><button type="button" class="act main" data-act="write">Write it into the file</button> <button type="button" class="act" data-act="back">Back to the file</button></p></div>`}${dropped.length === 0 ? undefined : html`<p data-key="dropped">No longer tried, since the line was edited: ${dropped.join('; ')}.</p>`}</div>`;
}
