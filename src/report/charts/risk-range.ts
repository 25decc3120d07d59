import type { Decided, Money } from '../../weigh/index.js';
import { aboutText } from '../decision-words.js';
import { html, type Html } from '../page/html.js';
import { fitted, SIZES, STRONG, widthOf } from './fit.js';
import { chart, line, rounded, says, WIDTHS, type Frame } from './frame.js';
import { scaleOf, type Scale } from './scale.js';

/** Where 10, 50 and 90 % of the cases of one option end, and how these are written. */
export interface RiskRange {
  readonly title: string;
  readonly mark: string | undefined;
  readonly at: readonly [p10: number, p50: number, p90: number];
  readonly texts: readonly [p10: string, p50: string, p90: string];
}

/** What the ranges are of. */
export type RangeOf = 'cost' | 'ready';

const NAMES: Readonly<Record<RangeOf, string>> = { cost: 'Cost in all in 10, 50 and 90 % of the cases', ready: 'Ready in 10, 50 and 90 % of the cases' };
const POINTS = ['10 %', '50 %', '90 %'] as const;
const HEAD = 22;
const ROW: Readonly<Record<Frame['layout'], number>> = { narrow: 42, wide: 30 };
const TITLES = 236;
const GAP = 14;

export function costRangeOf({ weighed, risk }: Decided, money: Money, mark?: string): RiskRange | undefined {
  if (risk === undefined) return undefined;
  const { p10, p50, p90 } = risk.inAll;
  return { title: weighed.option.title, mark, at: [p10, p50, p90], texts: [aboutText(p10, money), aboutText(p50, money), aboutText(p90, money)] };
}

export function readyRangeOf({ weighed, risk }: Decided, mark?: string): RiskRange | undefined {
  if (risk === undefined) return undefined;
  const { days: { p10, p50, p90 }, ready } = risk;
  return { title: weighed.option.title, mark, at: [p10, p50, p90], texts: ready === undefined ? [`${p10} d`, `${p50} d`, `${p90} d`] : [ready.p10, ready.p50, ready.p90] };
}

/** A line from 10 to 90 % of the cases with the median on it, an option a row, all on one scale. */
export function riskRange(ranges: readonly RiskRange[], of: RangeOf, frame: Frame): Html {
  const width = WIDTHS[frame.layout];
  const figure = STRONG * Math.max(widthOf('90 %', SIZES.small), ...ranges.flatMap(({ texts }) => texts.map((text) => widthOf(text, SIZES.small)))) + GAP;
  const left = frame.layout === 'narrow' ? 6 : TITLES + 6;
  const ends = ranges.flatMap(({ at }) => at);
  const scale = scaleOf(Math.min(...ends), Math.max(...ends), left, Math.max(left + 20, width - 3 * figure - 8));
  const columns = [2, 1, 0].map((back) => width - back * figure) as [number, number, number];
  const row = ROW[frame.layout];
  return chart(frame, {
    kind: 'ranges', height: HEAD + ranges.length * row,
    says: NAMES[of],
    tells: ranges.map(({ title, texts: [p10, p50, p90] }) => `${title}: ${p10}, ${p50}, ${p90}.`).join(' '),
    inside: [
      html`<g class="grid">${POINTS.map((point, i) => says(columns[i] as number, 11, point, 'small quiet', 'end'))}</g>`,
      ...ranges.map((range, i) => rowOf(range, scale, columns, HEAD + i * row, frame)),
    ],
  });
}

function rowOf({ title, mark, at, texts }: RiskRange, scale: Scale, columns: readonly [number, number, number], top: number, { layout }: Frame): Html {
  const [low, middle, high] = at.map(scale.at) as [number, number, number];
  const [y, text] = layout === 'narrow' ? [top + 24, top + 28] : [top + 11, top + 15];
  const markRoom = mark === undefined ? 0 : widthOf(mark) + 12;
  const marked = mark === undefined ? undefined : html`<tspan class="mark" dx="8">${mark}</tspan>`;
  return html`<g class="option">${says(0, layout === 'narrow' ? top + 11 : text, html`<tspan class="name">${fitted(title, ((layout === 'narrow' ? WIDTHS.narrow : TITLES - GAP) - markRoom) / STRONG)}</tspan>${marked}`)}
${line(scale.at(scale.low), y, scale.at(scale.high), y, 'guide')}${line(low, y, high, y, 'spread')}${line(low, y - 4, low, y + 4, 'end')}${line(high, y - 4, high, y + 4, 'end')}<circle class="median" cx="${rounded(middle)}" cy="${rounded(y)}" r="4.5"/>
${texts.map((one, i) => says(columns[i] as number, text, one, i === 1 ? 'small strong' : 'small', 'end'))}</g>`;
}
