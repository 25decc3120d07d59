import { zero } from '../../vocabulary/index.js';
import type { Money } from '../../weigh/index.js';
import { moneyText } from '../numbers.js';
import { html, type Html } from '../page/html.js';
import { costParts, partNames, type CostBar, type CostPart } from './cost-parts.js';
import { fitted, SIZES, STRONG, widthOf } from './fit.js';
import { bar, chart, line, says, WIDTHS, type Frame } from './frame.js';
import { legend, SAMPLE, type Entry } from './legend.js';
import { filled, patterns } from './patterns.js';
import { scaleOf, ticksOf, tickText, type Scale } from './scale.js';
import type { Numbers } from './table.js';

const ROW = 56;
const BAR = { top: 20, height: 16 } as const;

/**
 * The options' costs in all as bars on one scale, each built of its parts, with the total at its end. Below a bar a
 * thin line reaches from what it comes to if everything comes in low to what if everything comes in high.
 */
export function costBars(bars: readonly CostBar[], money: Money, frame: Frame): Html {
  const width = WIDTHS[frame.layout];
  const used = usedParts(bars);
  const scale = scaleFor(bars, width - totalsWidth(bars, money));
  const key = legend(frame, 2, entries(bars, used, frame));
  const top = key.height + 14;
  const foot = top + bars.length * ROW;
  return chart(frame, {
    kind: 'costs', height: foot + 16,
    says: 'Cost in all, option by option',
    tells: bars.map((one) => sentence(one, money)).join(' '),
    inside: [
      patterns(frame, used.flatMap((part) => costParts[part].fill.pattern ?? [])),
      key.drawn, grid(scale, money, top + BAR.top - 4, foot, frame),
      ...bars.map((one, i) => row(one, money, scale, top + i * ROW, frame)),
    ],
  });
}

/** The same numbers: a row for each part that some option has, a column for each option. */
export function costNumbers(bars: readonly CostBar[], money: Money): Numbers {
  const row = (name: string, value: (one: CostBar) => string) => [name, ...bars.map(value)];
  return {
    caption: 'What each option’s cost in all is made of; the access penalty apart, all else as on an engine stand',
    head: ['Part', ...bars.map(({ title }) => title)], figures: bars.length,
    rows: [
      ...usedParts(bars).map((part) => row(costParts[part].name, ({ parts }) => moneyText(parts[part], money))),
      ...(bars.some(givesBack) ? [row('less what comes back', ({ comesBack }) => moneyText(comesBack, money))] : []),
      row('Cost in all', ({ inAll }) => moneyText(inAll.likely, money)),
      ...(bars.some(isRanged) ? [row('if everything comes in low', ({ inAll }) => moneyText(inAll.low, money)), row('if everything comes in high', ({ inAll }) => moneyText(inAll.high, money))] : []),
    ],
  };
}

function usedParts(bars: readonly CostBar[]): readonly CostPart[] {
  return partNames.filter((part) => bars.some(({ parts }) => parts[part].gt(0)));
}

const givesBack = ({ comesBack }: CostBar) => comesBack.gt(0);
const isRanged = ({ inAll: { low, high } }: CostBar) => !low.eq(high);

function scaleFor(bars: readonly CostBar[], right: number): Scale {
  const ends = bars.flatMap(({ inAll, comesBack }) => [inAll.low, inAll.high, inAll.likely, inAll.likely.plus(comesBack)]).map((value) => value.toNumber());
  return scaleOf(Math.min(0, ...ends), Math.max(0, ...ends) || 1, 0.5, right);
}

function totalsWidth(bars: readonly CostBar[], money: Money): number {
  return 14 + STRONG * Math.max(0, ...bars.map(({ inAll }) => widthOf(moneyText(inAll.likely, money))));
}

function grid(scale: Scale, money: Money, top: number, foot: number, { layout }: Frame): Html {
  return html`<g class="grid">${ticksOf(scale, layout === 'narrow' ? 4 : 6).map((value) => {
    const [x, text] = [scale.at(value), tickText(value, money)];
    return html`${line(x, top, x, foot - 4, value === 0 ? 'axis' : 'guide')}${says(x, foot + 10, text, 'small quiet', x < widthOf(text, SIZES.small) / 2 ? 'start' : 'middle')}`;
  })}</g>`;
}

function row({ title, mark, parts, comesBack, inAll }: CostBar, money: Money, scale: Scale, top: number, frame: Frame): Html {
  const width = WIDTHS[frame.layout];
  const marked = mark === undefined ? undefined : html`<tspan class="mark" dx="8">${mark}</tspan>`;
  const name = fitted(title, (width - (mark === undefined ? 0 : widthOf(mark) + 12)) / STRONG);
  const y = top + BAR.top;
  let sum = zero;
  const pieces = partNames.flatMap((part) => {
    const from = scale.at(sum.toNumber());
    sum = sum.plus(parts[part]);
    return parts[part].gt(0) ? [filled(frame, from, scale.at(sum.toNumber()), y, BAR.height, costParts[part].fill)] : [];
  });
  const [low, likely, high] = [inAll.low, inAll.likely, inAll.high].map((value) => scale.at(value.toNumber())) as [number, number, number];
  return html`<g class="option">${says(0, top + 11, html`<tspan class="name">${name}</tspan>${marked}`, 'halo')}
${pieces}${comesBack.gt(0) ? bar(likely, scale.at(sum.toNumber()), y + BAR.height - 3, 3, 'back') : undefined}${low === high ? undefined : whisker(low, likely, high, y + BAR.height + 6)}
${says(width, y + 12.5, moneyText(inAll.likely, money), 'total', 'end')}</g>`;
}

/** The range of a total; the likely value is a notch in it. */
function whisker(low: number, likely: number, high: number, y: number): Html {
  return html`<g class="range">${line(low, y, high, y, 'whisker')}${line(low, y - 2.5, low, y + 2.5, 'whisker')}${line(high, y - 2.5, high, y + 2.5, 'whisker')}${line(likely, y - 2.5, likely, y + 2.5, 'whisker')}</g>`;
}

function entries(bars: readonly CostBar[], used: readonly CostPart[], frame: Frame): readonly Entry[] {
  return [
    ...used.map((part): Entry => ({ name: costParts[part].name, sample: (x, y) => filled(frame, x, x + SAMPLE, y, 9, costParts[part].fill) })),
    ...(bars.some(givesBack) ? [{ name: 'comes back', sample: (x: number, y: number) => bar(x, x + SAMPLE, y + 4, 3, 'back') }] : []),
    ...(bars.some(isRanged) ? [{ name: 'low to high', sample: (x: number, y: number) => whisker(x, x + SAMPLE / 2, x + SAMPLE, y + 5) }] : []),
  ];
}

function sentence({ title, mark, parts, inAll }: CostBar, money: Money): string {
  const penalty = parts.penalty.gt(0) ? `, of it ${moneyText(parts.penalty, money)} access penalty` : '';
  return `${title}: ${moneyText(inAll.likely, money)}${mark === undefined ? '' : ` (${mark})`}${penalty}.`;
}
