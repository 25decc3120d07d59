import type { Flip, Money } from '../../weigh/index.js';
import { distanceText, figureWords, flipValueText } from '../decision-words.js';
import { valueText } from '../numbers.js';
import { html, type Html } from '../page/html.js';
import { fitted, SIZES } from './fit.js';
import { chart, line, rounded, says, WIDTHS, type Frame, type Layout } from './frame.js';
import { scaleOf, type Scale } from './scale.js';
import type { Numbers } from './table.js';

/** How far a figure is from where it changes the choice. */
export interface FlipDistance {
  /** The line it is on, and what it is there; empty where the line says it. */
  readonly line: string;
  readonly what: string;
  readonly way: 'above' | 'below';
  /** Of today's figure, from 0; undefined where that is nothing. */
  readonly share: number | undefined;
  readonly today: string;
  /** The value beyond which the choice is another. */
  readonly value: string;
  readonly to: string;
}

interface Measures {
  readonly row: number;
  readonly left: number;
  readonly right: number;
  /** How far below the row's top its track is. */
  readonly track: number;
  readonly room: number;
}

const MEASURES: Readonly<Record<Layout, Measures>> = {
  narrow: { row: 62, left: 8, right: 352, track: 21, room: 296 },
  wide: { row: 46, left: 330, right: 574, track: 16, room: 306 },
};
const HEAD = 24;
/** Beyond this a distance is only `farther`: the near ones are what matters. */
const FARTHEST = 1;
/** A scale is never finer than this, or a small distance would look like a great one. */
const NEAREST = 0.05;

export function flipDistanceOf(flip: Flip, money: Money): FlipDistance {
  const { figure, line: title, way, share, to, measure } = flip;
  return {
    line: title, what: measure === 'average' ? 'likelihood' : figureWords(flip), way, share, to: to.title,
    today: valueText(figure.likely, figure.unit, money),
    value: flipValueText(flip, money),
  };
}

/** How far figures are from changing the choice, as steps up or down from what is written; the nearest on top. */
export function flipDistances(flips: readonly FlipDistance[], frame: Frame): Html {
  const { row, left, right } = MEASURES[frame.layout];
  const sorted = nearestFirst(flips);
  const most = Math.min(FARTHEST, Math.max(NEAREST, ...sorted.map(({ share = FARTHEST }) => share)));
  const scale = scaleOf(-most, most, left, right);
  const foot = HEAD + sorted.length * row;
  const middle = scale.at(0);
  return chart(frame, {
    kind: 'flips', height: foot,
    says: 'How far figures are from changing the choice',
    tells: sorted.map(sentence).join(' '),
    inside: [
      html`<g class="grid">${says(middle, 11, 'as written', 'small quiet', 'middle')}${says(left, 11, 'less', 'small quiet')}${says(right, 11, 'more', 'small quiet', 'end')}${sorted.map((_, i) => {
        const y = HEAD + i * row + MEASURES[frame.layout].track;
        return html`${line(left, y, right, y, 'guide')}${line(middle, y - 6, middle, y + 6, 'axis')}`;
      })}</g>`,
      ...sorted.map((flip, i) => rowOf(flip, scale, HEAD + i * row, frame)),
    ],
  });
}

export function flipNumbers(flips: readonly FlipDistance[]): Numbers {
  return {
    caption: 'How far figures are from changing the choice',
    head: ['Figure', 'As written', 'Changes', 'How far', 'Cheaper then'], figures: 0,
    rows: nearestFirst(flips).map((flip) => [nameOf(flip), flip.today, `${flip.way} ${flip.value}`, away(flip), flip.to]),
  };
}

function nearestFirst(flips: readonly FlipDistance[]): readonly FlipDistance[] {
  return [...flips].sort((a, b) => (a.share ?? Infinity) - (b.share ?? Infinity) || 0);
}

function rowOf(flip: FlipDistance, scale: Scale, top: number, frame: Frame): Html {
  const { track, room } = MEASURES[frame.layout];
  const width = WIDTHS[frame.layout];
  const y = top + track;
  const sign = flip.way === 'above' ? 1 : -1;
  const farther = flip.share === undefined || flip.share > FARTHEST;
  const share = Math.min(flip.share ?? FARTHEST, scale.high);
  const x = scale.at(sign * share);
  const tip = farther
    ? html`<polyline class="tip" points="${rounded(x - sign * 6)},${rounded(y - 5)} ${rounded(x)},${rounded(y)} ${rounded(x - sign * 6)},${rounded(y + 5)}"/>`
    : html`<circle class="tip" cx="${rounded(x)}" cy="${rounded(y)}" r="4"/>`;
  const then = `${flip.way} ${flip.value}: ${flip.to}`;
  const [name, below] = frame.layout === 'narrow' ? [top + 8, y + 20] : [top + 12, top + 28];
  return html`<g class="flip ${flip.way}">${says(0, name, fitted(nameOf(flip), room, SIZES.text, 'inside'), 'plain')}${line(scale.at(0), y, x, y, 'distance')}${tip}
${says(0, below, fitted(then, frame.layout === 'narrow' ? width : room, SIZES.small), 'small quiet')}${says(width, frame.layout === 'narrow' ? name : y + 4, away(flip), 'total', 'end')}</g>`;
}

function nameOf({ line: title, what }: FlipDistance): string {
  return what === '' ? title : `${title}, ${what}`;
}

function away({ share, way }: FlipDistance): string {
  return share === undefined ? 'from 0' : `${way === 'above' ? '+' : '−'}${distanceText(share)}`;
}

function sentence(flip: FlipDistance): string {
  return `${nameOf(flip)}: ${flip.today} as written; ${flip.way} ${flip.value}${flip.share === undefined ? '' : `, ${away(flip)}`}, ${flip.to} is cheaper.`;
}
