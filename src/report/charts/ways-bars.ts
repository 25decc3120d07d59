import type { Decimal } from '../../vocabulary/index.js';
import type { Money, Plan, Weighed } from '../../weigh/index.js';
import { hoursText, moneyText } from '../numbers.js';
import { html, type Html } from '../page/html.js';
import { fitted, STRONG, widthOf } from './fit.js';
import { chart, line, says, WIDTHS, type Frame } from './frame.js';
import { filled, patterns, type Fill } from './patterns.js';
import { scaleOf, type Scale } from './scale.js';

/** One plan of an option: which ways in it pays for, and what the option then comes to. */
export interface WayBar {
  readonly title: string;
  readonly mark: 'chosen' | 'runner-up' | undefined;
  readonly money: Decimal;
  readonly hours: Decimal;
}

/** The plans of one option, the chosen one first, then the next best. */
export interface WaysOf {
  readonly title: string;
  readonly ways: readonly WayBar[];
}

const HEAD = 24;
const ROW: Readonly<Record<Frame['layout'], number>> = { narrow: 54, wide: 38 };
const BAR = 8;
const MONEY: Fill = { look: 'labour', pattern: undefined };
const HOURS: Fill = { look: 'hours', pattern: 'upright' };

/** `remark` stands behind the option's title: that its figures are not of today's text. */
export function waysOf({ option, planned }: Weighed, remark?: string): WaysOf {
  const bar = (plan: Plan, mark: WayBar['mark']): WayBar => ({ title: plan.paid.length === 0 ? 'In the car' : plan.paid.map(({ title }) => title).join(', and '), mark, money: plan.money, hours: plan.hours });
  return { title: remark === undefined ? option.title : `${option.title} (${remark})`, ways: [bar(planned.chosen, 'chosen'), ...planned.others.map((plan, i) => bar(plan, i === 0 ? 'runner-up' : undefined))] };
}

/** Money and hours of each way in, option by option: two bars a plan, each sort on one scale. */
export function waysBars(options: readonly WaysOf[], money: Money, frame: Frame): Html {
  const all = options.flatMap(({ ways }) => ways);
  const columns = columnsFor(all, money, frame);
  let y = 4;
  const drawn = options.map((option) => {
    const top = y;
    y += HEAD + option.ways.length * ROW[frame.layout] + 8;
    return html`<g class="option">${says(0, top + 12, html`<tspan class="name">${fitted(option.title, WIDTHS[frame.layout] / STRONG)}</tspan>`)}
${option.ways.map((way, i) => row(way, money, columns, top + HEAD + i * ROW[frame.layout], frame))}</g>`;
  });
  return chart(frame, {
    kind: 'ways', height: Math.max(20, y - 4),
    says: 'Ways in, with the total and the hours of each',
    tells: options.map(({ title, ways }) => `${title}: ${ways.map((way) => `${way.title}${way.mark === undefined ? '' : ` (${way.mark})`} ${moneyText(way.money, money)}, ${hoursText(way.hours)} h`).join('; ')}.`).join(' '),
    inside: [patterns(frame, ['upright']), ...drawn],
  });
}

interface Column {
  readonly scale: Scale;
  readonly left: number;
  /** Where the figure ends. */
  readonly right: number;
  /** How far below the title it is drawn. */
  readonly down: number;
}

/** Money over hours where there is little room, and beside each other where there is more. */
function columnsFor(all: readonly WayBar[], money: Money, { layout }: Frame): { readonly money: Column; readonly hours: Column } {
  const width = WIDTHS[layout];
  const figures = { money: STRONG * Math.max(0, ...all.map((way) => widthOf(moneyText(way.money, money)))), hours: STRONG * Math.max(0, ...all.map((way) => widthOf(`${hoursText(way.hours)} h`))) };
  const widest = Math.max(figures.money, figures.hours);
  const most = { money: Math.max(0, ...all.map((way) => way.money.toNumber())) || 1, hours: Math.max(0, ...all.map((way) => way.hours.toNumber())) || 1 };
  const column = (kind: 'money' | 'hours', left: number, right: number, figure: number, down: number): Column => ({ left, right, down, scale: scaleOf(0, most[kind], left, right - figure - 12) });
  if (layout === 'narrow') return { money: column('money', 0.5, width, widest, 18), hours: column('hours', 0.5, width, widest, 33) };
  const middle = Math.round(width * 0.62);
  return { money: column('money', 0.5, middle - 24, figures.money, 18), hours: column('hours', middle, width, figures.hours, 18) };
}

function row({ title, mark, money: cost, hours }: WayBar, money: Money, columns: { readonly money: Column; readonly hours: Column }, top: number, frame: Frame): Html {
  const marked = mark === undefined ? undefined : html`<tspan class="mark" dx="8">${mark}</tspan>`;
  const drawn = (value: number, text: string, { scale, left, right, down }: Column, fill: Fill, look: string) => html`${filled(frame, left, Math.max(left, scale.at(value)), top + down, BAR, fill)}${line(left, top + down - 2, left, top + down + BAR + 2, 'axis')}${says(right, top + down + 8, text, look, 'end')}`;
  return html`<g class="${mark === 'chosen' ? 'chosen' : 'other'}">${says(0, top + 11, html`<tspan class="plain">${fitted(title, WIDTHS[frame.layout] - (mark === undefined ? 0 : widthOf(mark) + 12))}</tspan>${marked}`)}
${drawn(cost.toNumber(), moneyText(cost, money), columns.money, MONEY, mark === 'chosen' ? 'total' : 'figure')}${drawn(hours.toNumber(), `${hoursText(hours)} h`, columns.hours, HOURS, 'figure')}</g>`;
}
