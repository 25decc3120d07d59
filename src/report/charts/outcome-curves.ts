import { quantileOf } from '../../weigh/chance/index.js';
import type { Decided, Money } from '../../weigh/index.js';
import { aboutText, shareText } from '../decision-words.js';
import { html, type Html } from '../page/html.js';
import { fitted, SIZES, STRONG, widthOf } from './fit.js';
import { chart, line, rounded, says, WIDTHS, type Frame } from './frame.js';
import { legend } from './legend.js';
import { scaleOf, ticksOf, tickText, type Scale } from './scale.js';
import type { Numbers } from './table.js';
import { shareUpTo, thinned, type CurvePoint } from './thin.js';

/** What an option came to in each of the cases, and what it is quoted to come to. */
export interface OutcomeCurve {
  readonly title: string;
  readonly mark: string | undefined;
  readonly cases: Float64Array;
  readonly quoted: number;
}

const MOST_POINTS = 60;
const GUIDES = [0.1, 0.5, 0.9];
/** Each option has its own; they come round again after so many, and then only the labels tell. */
const DASHES = ['', '7 3', '2 3', '10 3 2 3', '14 4', '1 4', '6 2 2 2 2 2', '4 6'] as const;
const LABEL = 17;
const PLOT: Readonly<Record<Frame['layout'], number>> = { narrow: 190, wide: 210 };
const LEFT = 40;

export function outcomeCurveOf({ weighed, risk }: Decided, mark?: string): OutcomeCurve | undefined {
  if (risk === undefined) return undefined;
  return { title: weighed.option.title, mark, cases: risk.cases.inAll, quoted: weighed.inAll.likely.toNumber() };
}

/** Which share of the cases an option comes to at most how much in, as a curve an option. */
export function outcomeCurves(curves: readonly OutcomeCurve[], money: Money, frame: Frame): Html {
  const width = WIDTHS[frame.layout];
  const drawn = curves.map((curve, i) => ({ curve, i, points: thinned(curve.cases, MOST_POINTS) })).filter(({ points }) => points.length > 0);
  const values = drawn.flatMap(({ curve, points }) => [curve.quoted, (points[0] as CurvePoint).value, (points[points.length - 1] as CurvePoint).value]);
  const across = scaleOf(least(values), greatest(values), LEFT + 2, width - 6);
  const top = drawn.length * LABEL + 10;
  const foot = top + PLOT[frame.layout];
  const up = scaleOf(0, 1, foot, top);
  const key = legend(frame, foot + 30, drawn.length === 0 ? [] : [{ name: 'what is quoted', sample: (x, y) => line(x + 8, y - 1, x + 8, y + 10, 'quoted') }]);
  // The curve that ends first has the lowest label, so that no other's leader passes through it from above.
  const byEnd = [...drawn].sort((a, b) => endOf(b.points) - endOf(a.points) || a.i - b.i);
  return chart(frame, {
    kind: 'outcomes', height: foot + 30 + key.height,
    says: 'Share of the cases by cost in all',
    tells: drawn.map(({ curve }) => sentence(curve, money)).join(' '),
    inside: [
      grid(across, up, money, frame),
      ...drawn.map(({ curve, i, points }) => curveOf(curve, i, points, across, up)),
      ...byEnd.map(({ curve, i, points }, row) => label(curve, i, across.at(endOf(points)), row * LABEL, top, frame)),
      key.drawn,
    ],
  });
}

export function outcomeNumbers(curves: readonly OutcomeCurve[], money: Money): Numbers {
  return {
    caption: 'Share of the cases by cost in all',
    head: ['Option', 'Quoted', 'least', ...GUIDES.map((share) => `${shareText(share)} of cases: up to`), 'most'], figures: GUIDES.length + 3,
    rows: curves.filter(({ cases }) => cases.length > 0).map(({ title, cases, quoted }) => {
      const sorted = cases.slice().sort();
      return [title, aboutText(quoted, money), ...[0, ...GUIDES, 1].map((share) => aboutText(quantileOf(sorted, share), money))];
    }),
  };
}

const least = (values: readonly number[]) => values.reduce((low, value) => Math.min(low, value), Infinity);
const greatest = (values: readonly number[]) => values.reduce((high, value) => Math.max(high, value), -Infinity);

function endOf(points: readonly CurvePoint[]): number {
  return (points[points.length - 1] as CurvePoint).value;
}

function grid(across: Scale, up: Scale, money: Money, { layout }: Frame): Html {
  const width = WIDTHS[layout];
  const [foot, top] = [up.at(0), up.at(1)];
  const amounts = ticksOf(across, layout === 'narrow' ? 4 : 7).map((value) => {
    const [x, half] = [across.at(value), widthOf(tickText(value, money), SIZES.small) / 2];
    return html`${line(x, foot, x, foot + 4, 'axis')}${says(Math.min(x, width - half), foot + 17, tickText(value, money), 'small quiet', 'middle')}`;
  });
  return html`<g class="grid">${GUIDES.map((share) => html`${line(LEFT, up.at(share), width, up.at(share), 'guide')}${says(LEFT - 8, up.at(share) + 4, shareText(share), 'small quiet', 'end')}`)}${line(LEFT, top, width, top, 'guide faint')}${line(LEFT, foot, width, foot, 'axis')}${amounts}</g>`;
}

function curveOf({ cases, quoted }: OutcomeCurve, i: number, points: readonly CurvePoint[], across: Scale, up: Scale): Html {
  const path = points.map(({ value, share }) => `${rounded(across.at(value))},${rounded(up.at(share))}`).join(' ');
  const [x, y] = [across.at(quoted), up.at(shareUpTo(cases, quoted))];
  return html`<g class="outcome ${lookOf(i)}"><polyline class="curve" points="${path}"${dashed(i)}/>${line(x, y - 6, x, y + 6, 'quoted')}</g>`;
}

/** A label with a sample of its curve, over the curve's end, with a leader down to it. */
function label({ title, mark }: OutcomeCurve, i: number, end: number, y: number, top: number, { layout }: Frame): Html {
  const width = WIDTHS[layout];
  const sample = 26;
  const marked = mark === undefined ? undefined : html`<tspan class="mark" dx="8">${mark}</tspan>`;
  const markRoom = mark === undefined ? 0 : widthOf(mark) + 12;
  const room = Math.min(widthOf(title) * STRONG, width - sample - markRoom - 4) + markRoom;
  const from = Math.max(0, Math.min(end - sample - room - 6, width - sample - room));
  const reaches = from + sample + room + 4 < end;
  return html`<g class="outcome ${lookOf(i)}"><line class="curve" x1="${rounded(from)}" y1="${y + 8}" x2="${rounded(from + sample - 6)}" y2="${y + 8}"${dashed(i)}/>${says(from + sample, y + 12, html`<tspan class="name">${fitted(title, (room - markRoom) / STRONG + 0.01)}</tspan>${marked}`, 'halo')}<polyline class="leader" points="${reaches ? `${rounded(from + sample + room + 2)},${y + 8} ` : ''}${rounded(end)},${reaches ? y + 8 : y + 16} ${rounded(end)},${top}"/></g>`;
}

function lookOf(i: number): string {
  return `o${(i % DASHES.length) + 1}`;
}

function dashed(i: number): Html | undefined {
  const dashes = DASHES[i % DASHES.length] as string;
  return dashes === '' ? undefined : html` stroke-dasharray="${dashes}"`;
}

function sentence({ title, mark, cases, quoted }: OutcomeCurve, money: Money): string {
  const sorted = cases.slice().sort();
  const [low, middle, high] = GUIDES.map((share) => aboutText(quantileOf(sorted, share), money));
  return `${title}${mark === undefined ? '' : ` (${mark})`}: half of the cases up to ${middle ?? ''}, 10 % up to ${low ?? ''}, 90 % up to ${high ?? ''}; quoted ${aboutText(quoted, money)}.`;
}
