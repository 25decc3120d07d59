import { html, type Html } from './html.js';

/** Says over the whole page that working out its figures threw. The place is always there, so that a change of it is read out. */
export function stoppedBanner(stopped: { readonly figures: 'from before' | 'none'; readonly why: string } | undefined): Html {
  if (stopped === undefined) return html`<div data-key="stopped" role="status"></div>`;
  const lead = stopped.figures === 'none' ? 'There are no figures of this text.' : 'All figures here are from before, not of the text as it stands.';
  return html`<div data-key="stopped" role="status"><p class="verdict broken"><strong>${lead}</strong> ${toReport(stopped.why)}</p></div>`;
}

/** A fault of the tool, and what helps to mend it. */
export function toReport(why: string): string {
  return `Working it out stopped with “${why}”: a fault of this tool. Please report it, with the line that was written last.`;
}
