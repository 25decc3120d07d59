import type { Span } from '../../language/index.js';
import type { Comparison, Figure, Money } from '../../weigh/index.js';
import { valueText } from '../numbers.js';
import { RULED_OUT } from '../ruled-out.js';
import { html, type Html } from './html.js';
import type { Column } from './last-good.js';
import { causeId, findingId } from './targets.js';
import type { Derivations } from './derivations.js';
import type { Trying } from './trying-banner.js';

/** Where a span is for people: its line, and its file where that is not the estimate itself. */
export type LineOf = (span: Span) => { readonly line: number; readonly file: string | undefined } | undefined;

/** Where a picture is loaded from, that nobody has looked yet, or that there is none to show. */
export type PictureSource = { readonly kind: 'shown'; readonly address: string } | { readonly kind: 'awaited' | 'absent' };

/** What the page is made from. */
export interface PageView {
  readonly comparison: Comparison;
  readonly columns: readonly Column[];
  readonly lineOf: LineOf;
  readonly trying?: Trying;
  /** Why nothing of the text as it stands could be worked out; the columns are from before. */
  readonly stopped?: string;
  /** How the rows that are unfolded were made. */
  readonly derivations?: Derivations;
  /** What the page may load for a picture, by the address that its finding leads to; without it none is shown. */
  readonly pictureOf?: (uri: string) => PictureSource;
}

/** A figure that leads to the line it comes from. */
export function figureButton(id: string, text: Html | string): Html {
  return html`<button type="button" data-figure="${id}">${text}</button>`;
}

/** The likely value of a figure, as it is quoted. */
export function likelyText(figure: Figure, money: Money): string {
  return valueText(figure.likely, figure.unit, money);
}

/** A title from the file; it may read from right to left, and must not turn round what stands beside it. */
export function title(text: string): Html {
  return html`<bdi>${text}</bdi>`;
}

/** The cheapest options; more than one where they are equal to the cent. None where there is nothing to compare. */
export function isCheapest({ weighed }: Column, { ranking }: Comparison): boolean {
  const [first] = ranking;
  return first !== undefined && ranking.length > 1 && ranking.includes(weighed) && weighed.inAll.likely.eq(first.inAll.likely);
}

/** What stands under an option's title: that it is the cheapest, what speaks against it, or that its figures are not those of the text. */
export function mark(column: Column, { comparison, lineOf, stopped }: PageView): Html {
  if (column.state === 'weighed') return isCheapest(column, comparison) ? html`<span class="pick">cheapest</span>` : ruledOut(column, comparison);
  const lead = column.state === 'last-good' ? 'last good figures' : 'not weighed';
  const cause = stopped === undefined ? causeOf(column, comparison, lineOf) : html`working out the text as it stands stopped`;
  return html`<span class="broken">${lead}; ${cause}</span>`;
}

/** What was found that speaks against an option, each leading to its line; nothing where nothing does. */
function ruledOut({ weighed: { option: { ruledOutBy } } }: Column, { estimate: { findings } }: Comparison): Html {
  if (ruledOutBy.length === 0) return html``;
  return html`<span class="said">${RULED_OUT}: ${ruledOutBy.map((one, i) => html`${i === 0 ? '' : ', '}${figureButton(findingId(findings.indexOf(one)), title(one.title))}`)}</span>`;
}

function causeOf(column: Column, comparison: Comparison, lineOf: LineOf): Html {
  const [cause, ...others] = column.causes;
  const where = cause === undefined ? undefined : lineOf(cause.at);
  if (cause === undefined || where === undefined) return html`a line it rests on can’t be read`;
  const line = `line ${where.line}${where.file === undefined ? '' : ` of ${where.file}`}`;
  // What only weighing finds is on a line that reads well.
  const why = comparison.problems.includes(cause) ? 'can’t be weighed' : 'can’t be read';
  const more = others.length === 0 ? '' : ` (and ${others.length} more)`;
  return html`${figureButton(causeId(column), line)} ${why}${more}`;
}

/** In place of a figure that there is not. */
export const noFigure = html`<span aria-hidden="true">–</span><span class="unseen">not weighed</span>`;
